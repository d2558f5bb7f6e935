/** The theme's colours and font as values, for what is drawn on a canvas. Read them again when `theme.shown` changes. */

const NAMES = [
  'paper',
  'panel',
  'ink',
  'soft',
  'rule',
  'faint',
  'edge',
  'accent',
  'yours',
  'now',
  'before',
  'zone',
  'warn',
  'fault',
] as const;

export type InkName = (typeof NAMES)[number];
export type Ink = Readonly<Record<InkName, string>> & { readonly sans: string };

export function readInk(element: Element): Ink {
  const style = getComputedStyle(element);
  const colours = Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]));
  return { ...(colours as Record<InkName, string>), sans: style.getPropertyValue('--sans').trim() };
}
