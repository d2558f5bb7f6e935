/** Shows one part of the page in the document of a test, and takes it away when the test has finished. */
import { flushSync, mount, unmount, type Component } from 'svelte';
import { onTestFinished } from 'vitest';
import WithStates from './WithStates.svelte';

/** `provide` hands down the states that the part asks for, and no more. */
export function showPart<P extends Record<string, unknown>>(
  part: Component<P>,
  provide: () => void,
  props: P,
): HTMLElement {
  const target = document.createElement('main');
  document.body.append(target);
  const wrapped = { provide, part: part as unknown as Component<Record<string, unknown>>, props };
  const shown = mount(WithStates, { target, props: wrapped });
  flushSync();
  onTestFinished(async () => {
    await unmount(shown);
    target.remove();
  });
  return target;
}

/** The one element of the kind that says so. */
export function sole<K extends keyof HTMLElementTagNameMap>(
  within: HTMLElement,
  kind: K,
  says: RegExp,
): HTMLElementTagNameMap[K] {
  const found = [...within.querySelectorAll(kind)].filter((one) =>
    says.test(one.getAttribute('aria-label') ?? one.textContent),
  );
  if (found[0] === undefined || found.length > 1) throw new Error(`${found.length} of ${kind} say ${String(says)}.`);
  return found[0];
}
