/** Counts turns along the gate, reading by reading, the same live and in a log. */
import { angleOf } from '../../geometry/angle.ts';
import { directionAngles } from '../../geometry/directions.ts';
import type { Pair, StickFields } from '../../pad/stick.ts';
import type { Turn } from './evidence.ts';
import { GateEstimate } from './gate-estimate.ts';
import { HeldMedian } from './held-median.ts';
import { OuterRadius } from './outer-radius.ts';
import type { RimSample } from './rim-sample.ts';
import { RimStretch } from './rim-stretch.ts';
import { TurnUnderWay } from './turn-under-way.ts';

/** Turns, or turns that reached something, each way. */
export interface Tally {
  readonly clockwise: number;
  readonly counterClockwise: number;
}

/** A turn of ±360°; one that ends within one direction of it, where the hand stopped, is whole too. */
const WHOLE = 360;
const NEARLY_WHOLE = 355;
/** A shorter way along the gate proves nothing of it; of a longer one each end is left out by as much. */
const LEAST_PART = 30;
const END_DEGREES = 7.5;
/** Going back by less is the hand's unrest, by more a change of way. */
const CHANGE_OF_WAY = 30;
/** The stick is still on its way out while it is nearer the rest than this share of where it is 30° later. */
const OUT_SHARE = 0.8;
/** Between samples farther apart the way is not known. */
const LONGEST_STEP = 90;
/** Nearer the rest than this share of the half range there is no rim, and angles are noise. */
const LEAST_SHARE = 0.1;

/**
 * A turn is ±360° of accumulated angle about `about` (raw counts) along the rim: the usual outer radius or at least half
 * of it. It begins where the one before ended, where the way changed or where the rim was reached; leaving the rim or a
 * step of more than 90° between samples interrupts it, and an interrupted turn is not counted. Samples are readings
 * after the running median of five; per direction the one of largest radius is kept, none is interpolated.
 */
export class TurnCounter {
  readonly #fields: StickFields;
  readonly #about: Pair;
  readonly #floor: number;
  readonly #outer = new OuterRadius();
  readonly #median = new HeldMedian((t, x, y) => this.#sample(t, x, y));
  readonly #gate = new GateEstimate();
  #counted: { readonly turn: Turn; readonly leastRadius: number; readonly radii: Float64Array }[] = [];
  #parts: { readonly turn: Turn; readonly radii: Float64Array; readonly from: number; readonly to: number }[] = [];
  /** Samples since the farthest angle of the turn under way, that one first; before a way is told, since the rim. */
  readonly #pending = new RimStretch();
  #turn: TurnUnderWay | null = null;
  #last: RimSample | null = null;

  constructor(fields: StickFields, about: Pair) {
    this.#fields = fields;
    this.#about = about;
    const smaller = Math.min(fields.x.maximum - fields.x.minimum, fields.y.maximum - fields.y.minimum);
    this.#floor = (LEAST_SHARE * smaller) / 2;
  }

  /**
   * Whole turns so far, in order. What later proves to lie inside the gate is no longer among them: a whole turn well
   * within it, or a rim point of a turn where other ways along the gate came clearly farther out.
   */
  get turns(): Turn[] {
    return this.#counted
      .filter((one) => one.leastRadius >= this.#outer.least)
      .map(({ turn, radii }) => ({
        ...turn,
        points: turn.points.map((point, k) => (this.#gate.isAtGate(k, radii[k] ?? 0) ? point : null)),
      }));
  }

  /**
   * Ways of 30° and more along the gate that are no whole turn, in order: without the directions at either end, where the hand came to the gate
   * and left it, and without what lies inside of the gate.
   */
  get parts(): Turn[] {
    return this.#parts.map(({ turn, radii, from, to }) => ({
      ...turn,
      points: turn.points.map((point, k) => {
        const isEnd =
          apart(directionAngles[k] ?? 0, from) < END_DEGREES || apart(directionAngles[k] ?? 0, to) < END_DEGREES;
        const radius = radii[k] ?? 0;
        return !isEnd && radius >= this.#outer.least && this.#gate.isAtGate(k, radius) ? point : null;
      }),
    }));
  }

  /** How many whole turns there are each way, without their points: cheap enough for every reading. */
  get tally(): Tally {
    let clockwise = 0;
    let counterClockwise = 0;
    for (const { turn, leastRadius } of this.#counted) {
      if (leastRadius < this.#outer.least) continue;
      if (turn.way === 'clockwise') clockwise += 1;
      else counterClockwise += 1;
    }
    return { clockwise, counterClockwise };
  }

  /** Degrees of the turn under way, counter-clockwise positive; 0 off the rim. */
  get underway(): number {
    if (this.#turn === null) return 0;
    return this.#turn.way === 'counterClockwise' ? this.#turn.turned : -this.#turn.turned;
  }

  /** The usual outer radius so far, in counts. */
  get outerRadius(): number {
    return this.#outer.usual;
  }

  reading(t: number, x: number, y: number): void {
    this.#median.reading(t, x, y);
  }

  /** What the stick did is not known for a while: the turn under way is given up. */
  interrupt(): void {
    this.#median.end();
    this.#leave();
  }

  /** No further reading comes: the last samples are looked at. */
  end(): void {
    this.interrupt();
  }

  /** Drops the last whole turn, and the one under way. */
  dropLast(): void {
    this.interrupt();
    const last = this.#counted.findLastIndex((one) => one.leastRadius >= this.#outer.least);
    if (last >= 0) this.#counted = this.#counted.filter((_, i) => i !== last);
  }

  #sample(t: number, x: number, y: number): void {
    const dx = this.#fields.x.up * (x - this.#about.x);
    const dy = this.#fields.y.up * (y - this.#about.y);
    const radius = Math.hypot(dx, dy);
    if (radius >= this.#floor) this.#outer.see(dx, dy, radius);
    if (radius < this.#floor || radius < this.#outer.least) {
      this.#leave();
      return;
    }
    const step = this.#last === null ? 0 : stepBetween(this.#last, dx, dy);
    if (Math.abs(step) > LONGEST_STEP) this.#leave();
    const angle = this.#last === null ? angleOf(dx, dy) : this.#last.angle + step;
    this.#last = { t, x, y, dx, dy, radius, angle };
    this.#follow(this.#last);
  }

  #follow(sample: RimSample): void {
    const leastRadius = this.#turn?.leastRadius ?? this.#pending.leastRadius;
    if (leastRadius < this.#outer.least) {
      this.#turn = null;
      this.#pending.clear();
    }
    this.#pending.push(sample);
    if (this.#turn === null) this.#findWay(sample);
    else this.#goOn(this.#turn, sample);
  }

  /** The way is told by the first 30°. */
  #findWay({ angle }: RimSample): void {
    const { low, high } = this.#pending;
    if (low !== null && angle - low.angle >= CHANGE_OF_WAY) this.#begin('counterClockwise', low);
    else if (high !== null && high.angle - angle >= CHANGE_OF_WAY) this.#begin('clockwise', high);
  }

  /** A turn from a pending sample on, without the way out to the gate; the latest is the farthest. */
  #begin(way: Turn['way'], first: RimSample): void {
    const pending = this.#pending.from(first);
    const outermost = pending.reduce((most, sample) => Math.max(most, sample.radius), 0);
    const samples = pending.slice(pending.findIndex((sample) => sample.radius >= OUT_SHARE * outermost));
    this.#turn = new TurnUnderWay(way, samples[0]?.angle ?? first.angle);
    for (const sample of samples) this.#turn.add(sample);
    this.#keepLast(samples);
  }

  #goOn(turn: TurnUnderWay, sample: RimSample): void {
    const further = turn.way === 'counterClockwise' ? sample.angle - turn.lastAngle : turn.lastAngle - sample.angle;
    if (further <= -CHANGE_OF_WAY) this.#changeWay(turn);
    if (further < 0) return;
    const samples = this.#pending.from(null);
    for (const pending of samples) turn.add(pending);
    this.#keepLast(samples);
    if (turn.turned < WHOLE) return;
    this.#finish(turn);
    this.#turn = new TurnUnderWay(turn.way, turn.startAngle + (turn.way === 'counterClockwise' ? WHOLE : -WHOLE));
    this.#turn.add(sample);
  }

  /** The farthest sample of the turn is the first of the pending ones and begins the next. */
  #changeWay(turn: TurnUnderWay): void {
    this.#finish(turn);
    const [farthest] = this.#pending.from(null);
    if (farthest !== undefined) this.#begin(turn.way === 'clockwise' ? 'counterClockwise' : 'clockwise', farthest);
  }

  #keepLast(samples: readonly RimSample[]): void {
    const last = samples[samples.length - 1];
    this.#pending.clear();
    if (last !== undefined) this.#pending.push(last);
  }

  /** A way along the gate is over; it counts where it is whole. */
  #finish(turn: TurnUnderWay): void {
    const { leastRadius, radii } = turn;
    this.#gate.add(radii);
    if (turn.turned >= NEARLY_WHOLE) this.#counted.push({ turn: turn.finish(), leastRadius, radii });
    else if (turn.turned >= LEAST_PART)
      this.#parts.push({ turn: turn.finish(), radii, from: turn.startAngle, to: turn.lastAngle });
  }

  #leave(): void {
    if (this.#turn !== null) this.#finish(this.#turn);
    this.#turn = null;
    this.#pending.clear();
    this.#last = null;
  }
}

/** Degrees between two directions, whatever turns they were counted with. */
function apart(a: number, b: number): number {
  return Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);
}

/** Signed degrees from a sample to a place, −180 … 180. */
function stepBetween(from: RimSample, dx: number, dy: number): number {
  const cross = from.dx * dy - from.dy * dx;
  const dot = from.dx * dx + from.dy * dy;
  return (Math.atan2(cross, dot) * 180) / Math.PI;
}
