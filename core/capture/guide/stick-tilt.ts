/** A stick's tilt from its rest in shares of the half range, y up: what guides judge by, whatever the gate. */
import type { Pair, StickFields } from '../../pad/stick.ts';
import { middleOf } from '../evidence/main-rest.ts';

function tiltFrom(fields: StickFields, home: Pair, x: number, y: number): Pair {
  return {
    x: (fields.x.up * (x - home.x)) / ((fields.x.maximum - fields.x.minimum) / 2),
    y: (fields.y.up * (y - home.y)) / ((fields.y.maximum - fields.y.minimum) / 2),
  };
}

/** From farther than this share of the half range off the middle no stick rests: it is held. */
const LARGEST_OFFSET = 0.4;

/** Where a stick rests: the mean of the rest points taken, else where it stood first, else the middle of the fields. */
export class Home {
  readonly #fields: StickFields;
  #place: Pair;
  #isKnown: boolean;

  constructor(rests: readonly Pair[], fields: StickFields) {
    const mean = (axis: 'x' | 'y'): number => rests.reduce((sum, rest) => sum + rest[axis], 0) / rests.length;
    this.#fields = fields;
    this.#isKnown = rests.length > 0;
    this.#place = this.#isKnown ? { x: mean('x'), y: mean('y') } : middleOf(fields);
  }

  tilt(x: number, y: number): Pair {
    return tiltFrom(this.#fields, this.#place, x, y);
  }

  /** The stick stands here; the first time, and not far off the middle, it rests here. */
  stands(x: number, y: number): void {
    if (this.#isKnown) return;
    const tilt = this.tilt(x, y);
    if (Math.hypot(tilt.x, tilt.y) <= LARGEST_OFFSET) this.#place = { x, y };
    this.#isKnown = true;
  }
}

/** Parts of a tilt along a direction (degrees) and to the left of it. */
export function alongAcross(tilt: Pair, degrees: number): { readonly along: number; readonly across: number } {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { along: tilt.x * cos + tilt.y * sin, across: tilt.y * cos - tilt.x * sin };
}
