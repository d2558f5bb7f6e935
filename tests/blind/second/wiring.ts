/** What becomes of a sensor's signal on the way to the converter: lost, unsteady, or what it was. */
import type { Chance } from './chance.ts';
import { gateRadius } from './gate.ts';
import type { Axes, Goes, Lost } from './lost-signal.ts';
import type { Part } from './part.ts';
import { apart, directionOf, sizeOf, type Vec } from './plane.ts';

/** Pressed on the rim from this share of its radius on. */
const ON_RIM = 0.97;
const LEAST_OUT = 0.001;
const MOST_OUT = 0.04;
/** A wiper on a worn stretch finds another contact so often, seconds. */
const CONTACT_SECONDS = 0.003;
/** A line that nothing holds takes on another charge so often, seconds. */
const CHARGE_SECONDS = 0.01;

/** Volts in shares of the converter's range, 0 to 1. */
interface Volts {
  x: number;
  y: number;
}

export class Wiring {
  readonly #part: Part;
  readonly #chance: Chance;
  /** By fault: whether the present visit of its place is one that shows it. */
  readonly #visits = new Map<Lost, boolean>();
  readonly #outUntil = new Map<Lost, number>();
  /** The last contact or charge of an unsteady line, and when it changes. */
  readonly #unsteady = new Map<string, { value: number; readonly until: number }>();

  constructor(part: Part, chance: Chance) {
    this.#part = part;
    this.#chance = chance;
  }

  /** `tilt` in the gate's axes, `sensed` in shares of the half travel, `clean` what a sound line would bring. */
  carry(t: number, tilt: Vec, sensed: Vec, clean: Vec): Vec {
    const volts = { x: clean.x, y: clean.y };
    for (const lost of this.#part.lost) this.#take(lost, t, tilt, sensed, volts);
    return volts;
  }

  #take(lost: Lost, t: number, tilt: Vec, sensed: Vec, volts: Volts): void {
    switch (lost.kind) {
      case 'sector':
        if (this.#isVisited(lost, lost.share, this.#isInSector(lost, tilt))) this.#lose(lost.axes, lost.goes, t, volts);
        break;
      case 'spot':
        if (isOver(lost, sensed)) this.#lose(lost.axis, lost.goes, t, volts);
        break;
      case 'worn':
        if (isOver(lost, sensed)) {
          const step = this.#held(`worn ${lost.axis}`, t, CONTACT_SECONDS, () => this.#chance.normal());
          volts[lost.axis] += (lost.unsteady * this.#part[lost.axis].span * step) / 2;
        }
        break;
      case 'contact':
        this.#contact(lost, t, volts);
        break;
      case 'spike':
        if (this.#chance.happens(1 / lost.once)) volts[this.#chance.pick(['x', 'y'])] = this.#chance.next();
        break;
    }
  }

  #contact(lost: Extract<Lost, { kind: 'contact' }>, t: number, volts: Volts): void {
    if (this.#chance.happens(1 / lost.once))
      this.#outUntil.set(lost, t + LEAST_OUT * (MOST_OUT / LEAST_OUT) ** this.#chance.next());
    if (t <= (this.#outUntil.get(lost) ?? -1)) this.#lose(lost.axes, lost.goes, t, volts);
  }

  #isInSector({ toward, width }: { readonly toward: number; readonly width: number }, tilt: Vec): boolean {
    const direction = directionOf(tilt);
    return apart(direction, toward) <= width / 2 && sizeOf(tilt) >= ON_RIM * gateRadius(this.#part.gate, direction);
  }

  #isVisited(lost: Lost, share: number, isThere: boolean): boolean {
    if (!isThere) this.#visits.delete(lost);
    else if (!this.#visits.has(lost)) this.#visits.set(lost, this.#chance.happens(share));
    return this.#visits.get(lost) ?? false;
  }

  #lose(axes: Axes, goes: Goes, t: number, volts: Volts): void {
    for (const axis of ['x', 'y'] as const) {
      if (axes !== 'both' && axes !== axis) continue;
      const ends = { middle: 0.5, low: 0, high: 1 };
      volts[axis] =
        goes === 'anywhere' ? this.#held(`lost ${axis}`, t, CHARGE_SECONDS, () => this.#chance.next()) : ends[goes];
    }
  }

  #held(line: string, t: number, seconds: number, draw: () => number): number {
    const last = this.#unsteady.get(line);
    if (last !== undefined && t < last.until) return last.value;
    const next = { value: draw(), until: t + seconds };
    this.#unsteady.set(line, next);
    return next.value;
  }
}

/** The wiper of this axis stands on the place. */
function isOver({ axis, at, width }: { axis: 'x' | 'y'; at: number; width: number }, sensed: Vec): boolean {
  return Math.abs(sensed[axis] - at) <= width / 2;
}
