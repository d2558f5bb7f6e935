/** Numbers and directions as the sentences of findings say them. */

const NAMES = [
  'right',
  'up and right',
  'up',
  'up and left',
  'left',
  'down and left',
  'down',
  'down and right',
] as const;

export function percent(share: number, digits = 1): string {
  return `${(100 * share).toFixed(digits)} %`;
}

export function degrees(value: number, digits = 1): string {
  return `${value.toFixed(digits)}°`;
}

/** The nearest of eight directions of a difference, y up. */
export function wayOf(x: number, y: number): string {
  const eighth = Math.round((Math.atan2(y, x) * 4) / Math.PI);
  return NAMES[(eighth + 8) % 8] ?? NAMES[0];
}

/** `right`, `left`, `up` or `down`: a side of an axis, y up. */
export function sideName(axis: 'x' | 'y', side: 1 | -1): string {
  if (axis === 'x') return side > 0 ? 'right' : 'left';
  return side > 0 ? 'up' : 'down';
}

/** With its uncertainty where there is one. */
export function plusMinus(text: string, u95: string | null): string {
  return u95 === null ? text : `${text} ± ${u95}`;
}
