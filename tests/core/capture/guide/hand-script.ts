/**
 * A stick and a hand simple enough to know every answer beforehand: the hand does what a test tells it, the stick reports it.
 * It shares nothing with the program but types.
 */
import type { StickTrack, Track } from '../../../../core/capture/evidence/track.ts';
import type { LogHeader } from '../../../../core/log/header.ts';
import type { Mark } from '../../../../core/log/visitor.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { Pair, StickFields } from '../../../../core/pad/stick.ts';

export interface Reading {
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly down: boolean;
}

export interface StickPlan {
  readonly fields: StickFields;
  /** Where it rests, raw counts. */
  readonly rest: Pair;
  /** Counts from the rest to the gate in a direction (degrees). */
  readonly gate: (degrees: number) => number;
  readonly intervalUs?: number;
  /** Peak of the evenly spread noise, counts. */
  readonly noise?: number;
  /** Counts come in multiples of this. */
  readonly step?: number;
  /** Only readings that differ from the one before are reported. */
  readonly onChange?: boolean;
  readonly seed?: number;
}

export const eightBits: StickFields = {
  x: { minimum: 0, maximum: 255, up: 1 },
  y: { minimum: 0, maximum: 255, up: -1 },
};
export const twelveBits: StickFields = {
  x: { minimum: 0, maximum: 4095, up: 1 },
  y: { minimum: 0, maximum: 4095, up: -1 },
};

export class HandScript {
  readonly readings: Reading[] = [];
  readonly marks: Mark[] = [];
  readonly gaps: { t: number; lost: number | null }[] = [];
  /** Called with every reading as it is reported, and with the time in between. */
  hear: { reading(reading: Reading): void; advance(t: number): void } | null = null;
  t = 0;
  down = false;
  readonly #plan: StickPlan;
  /** Counts from the planned rest, y up. */
  #place: Pair = { x: 0, y: 0 };
  #seed: number;

  constructor(plan: StickPlan) {
    this.#plan = plan;
    this.#seed = plan.seed ?? 1;
  }

  /** Evenly spread in [0, 1). */
  chance(): number {
    this.#seed = (Math.imul(this.#seed, 1664525) + 1013904223) >>> 0;
    return this.#seed / 2 ** 32;
  }

  /** Does nothing for so long. */
  stay(seconds: number): this {
    return this.#go(seconds, () => this.#place);
  }

  /** Straight to a share of the gate in a direction. */
  push(degrees: number, share = 1, seconds = 0.15): this {
    return this.#goStraight(polar(share * this.#plan.gate(degrees), degrees), seconds);
  }

  /** Lets go: straight back to a place so many counts from the planned rest. */
  letGo(rest: Pair = { x: 0, y: 0 }, seconds = 0.04): this {
    return this.#goStraight(rest, seconds);
  }

  /** Along the gate from where the stick is; degrees counter-clockwise, negative for the other way. */
  turn(degrees: number, secondsPerTurn = 1.2, share: (turned: number) => number = () => 1): this {
    const start = (Math.atan2(this.#place.y, this.#place.x) * 180) / Math.PI;
    return this.#go((Math.abs(degrees) / 360) * secondsPerTurn, (part) => {
      const angle = start + degrees * part;
      return polar(share(degrees * part) * this.#plan.gate(angle), angle);
    });
  }

  press(down: boolean): this {
    this.down = down;
    return this;
  }

  mark(name: string, detail: Mark['detail'] = {}): this {
    this.marks.push({ t: this.t, name, detail });
    return this;
  }

  /** Nothing is reported for so long, and the log says so. */
  lose(seconds: number, lost: number | null = null): this {
    this.t += Math.round(seconds * 1e6);
    this.gaps.push({ t: this.t, lost });
    return this;
  }

  get stick(): StickTrack {
    return {
      fields: this.#plan.fields,
      t: Float64Array.from(this.readings, (one) => one.t),
      x: Float64Array.from(this.readings, (one) => one.x),
      y: Float64Array.from(this.readings, (one) => one.y),
      buttonDown: Uint8Array.from(this.readings, (one) => Number(one.down)),
    };
  }

  get track(): Track {
    return trackOf({ left: this.stick }, this.marks, this.gaps);
  }

  #goStraight(to: Pair, seconds: number): this {
    const from = this.#place;
    return this.#go(seconds, (part) => ({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part }));
  }

  #go(seconds: number, placeAt: (part: number) => Pair): this {
    const { intervalUs = 4000 } = this.#plan;
    const start = this.t;
    const length = Math.round(seconds * 1e6);
    for (let t = start + intervalUs; t <= start + length; t += intervalUs) {
      this.t = t;
      this.#report(placeAt((t - start) / length));
    }
    this.t = start + length;
    this.#place = placeAt(1);
    return this;
  }

  #report(place: Pair): void {
    const { fields, rest, noise = 0, step = 1, onChange = false } = this.#plan;
    const count = (axis: 'x' | 'y'): number => {
      const { minimum, maximum, up } = fields[axis];
      const exact = rest[axis] + up * place[axis] + noise * (2 * this.chance() - 1);
      return Math.min(maximum, Math.max(minimum, step * Math.round(exact / step)));
    };
    const reading = { t: this.t, x: count('x'), y: count('y'), down: this.down };
    const last = this.readings.at(-1);
    const isSame = last?.x === reading.x && last.y === reading.y && last.down === reading.down;
    if (onChange && isSame) {
      this.hear?.advance(this.t);
      return;
    }
    this.readings.push(reading);
    this.hear?.reading(reading);
  }
}

export function trackOf(sticks: Track['sticks'], marks: readonly Mark[] = [], gaps: Track['gaps'] = []): Track {
  const fields = Object.fromEntries(Object.entries(sticks).map(([stick, track]) => [stick, track.fields]));
  return {
    header: plainHeader,
    layout: { ...plainLayout, sticks: fields },
    sticks,
    reportTimes: sticks.left?.t ?? sticks.right?.t ?? new Float64Array(0),
    duplicates: 0,
    marks,
    gaps,
  };
}

export const plainHeader: LogHeader = {
  kind: 'stickwright-report-log',
  version: 1,
  program: null,
  startedAt: '2025-01-01T00:00:00.000Z',
  stage: null,
  domain: 'reported',
  pad: { vendorId: 0x1209, productId: 11, product: 'script', serial: null, transport: 'simulated', unit: null },
  descriptor: null,
  profile: null,
};

const plainLayout: PadLayout = {
  profile: null,
  domain: 'reported',
  sticks: {},
  stickSources: {},
  triggers: {},
  hat: null,
  buttons: [],
  clicks: {},
  noSticks: null,
};

export function polar(radius: number, degrees: number): Pair {
  const angle = (degrees * Math.PI) / 180;
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}
