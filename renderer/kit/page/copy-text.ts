/** Puts text on the clipboard. False where the system refuses it. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch (refusal) {
    // Refused by permission or because the page has no focus: the caller says so.
    if (refusal instanceof DOMException) return false;
    throw refusal;
  }
}
