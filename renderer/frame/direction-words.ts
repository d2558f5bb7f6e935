/** Directions in words, for prompts, labels and the foot line. */
const WORDS = ['right', 'up-right', 'up', 'up-left', 'left', 'down-left', 'down', 'down-right'] as const;

/** The word of the eighth that an angle (degrees counter-clockwise from +x) lies in, e.g. 55 → "up-right". */
export function directionWord(angle: number): string {
  const eighth = ((Math.round(angle / 45) % 8) + 8) % 8;
  return WORDS[eighth] ?? 'right';
}

/** E.g. "55° up-right". */
export function directionText(angle: number): string {
  return `${String(Math.round(angle))}° ${directionWord(angle)}`;
}
