/** Says a direction so that a hand can follow it without a screen. */
import { wrapDegrees } from '../../geometry/angle.ts';

const AXES = ['right', 'up', 'left', 'down'] as const;

/** Degrees counter-clockwise from right, e.g. `right`, `right and a little up`, `up and right`. To 7.5° either way. */
export function directionWords(angle: number): string {
  const sixth = Math.round(wrapDegrees(angle) / 15) % 24;
  const axis = Math.floor(sixth / 6);
  const first = AXES[axis] ?? 'right';
  const second = AXES[(axis + 1) % 4] ?? 'up';
  switch (sixth % 6) {
    case 0:
      return first;
    case 1:
      return `${first} and a little ${second}`;
    case 2:
      return `between ${first} and the ${cornerWords(first, second)}`;
    case 3:
      return `to the ${cornerWords(first, second)}`;
    case 4:
      return `between ${second} and the ${cornerWords(first, second)}`;
    default:
      return `${second} and a little ${first}`;
  }
}

function cornerWords(a: string, b: string): string {
  const [upright, sideways] = a === 'up' || a === 'down' ? [a, b] : [b, a];
  return `${upright === 'up' ? 'upper' : 'lower'} ${sideways}`;
}
