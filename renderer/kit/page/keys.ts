/** Keys of a view act wherever the focus is, but never while something is being typed or a control wants the key itself. */

/** True for keys that belong to the focused field or list, or that carry Ctrl, Alt or Meta. */
export function isTyping(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return true;
  const target = event.target;
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return target.type !== 'radio' && target.type !== 'checkbox';
  return target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

/** True where Space or Enter would press what has the focus. */
export function pressesFocus(event: KeyboardEvent): boolean {
  const target = event.target;
  return target instanceof HTMLElement && target.closest('button, a, summary, input, select, textarea') !== null;
}
