/** Where a stick stands: led by a thumb, stopped by its gate, or swinging back to where its friction lets it rest. */
import type { Chance } from './chance.ts';
import { gateRadius } from './gate.ts';
import type { Part } from './part.ts';
import { directionOf, minus, ORIGIN, plus, polar, sizeOf, times, type Vec } from './plane.ts';

/** Pressed so much further than the gate, shares of its radius, the thumb gives its full pressure. */
const FULL_PRESSURE = 0.15;
const SURVEY_SECONDS = 150;
const CREEPS = 1 / 12;

export class Stick {
  readonly #part: Part;
  readonly #chance: Chance;
  #place: Vec;
  #rest: Vec;
  #carried: Vec = ORIGIN;
  #releases = 0;
  /** When and where it was let go; null while it is held. */
  #free: { readonly t: number; readonly from: Vec } | null;

  constructor(part: Part, chance: Chance) {
    this.#part = part;
    this.#chance = chance;
    this.#rest = this.#drawRest(ORIGIN, -1);
    this.#place = this.#rest;
    this.#free = { t: 0, from: this.#rest };
  }

  /** Tilt in the gate's axes, degrees. */
  get place(): Vec {
    return this.#place;
  }

  get isLetGo(): boolean {
    return this.#free !== null;
  }

  /** How far it still is from where it will rest, degrees. */
  get toGo(): number {
    return sizeOf(minus(this.#place, this.#rest));
  }

  /** A thumb leads it to this tilt, as far as the gate lets it. */
  hold(wanted: Vec): void {
    this.#free = null;
    this.#place = this.#stopped(wanted);
  }

  /** The thumb leaves it; `t` in seconds of the log. Nothing happens to a stick that is free. */
  letGo(t: number): void {
    if (this.#free !== null) return;
    this.#rest = this.#drawRest(minus(this.#place, this.#middle), this.#releases);
    this.#releases += 1;
    this.#free = { t, from: this.#place };
  }

  /** Untouched up to this time. */
  swing(t: number): void {
    const drift = times(this.#part.spring.drift, t / SURVEY_SECONDS);
    const left = this.#free === null ? 0 : leftOf(this.#part, t - this.#free.t);
    const from = this.#free === null ? ORIGIN : minus(this.#free.from, this.#rest);
    this.#place = plus(plus(this.#rest, drift), times(from, left));
  }

  get #middle(): Vec {
    return plus(this.#part.seat, this.#part.springOff);
  }

  #stopped(wanted: Vec): Vec {
    const { gate } = this.#part;
    const direction = directionOf(wanted);
    const radius = gateRadius(gate, direction);
    const beyond = sizeOf(wanted) / radius - 1;
    if (beyond <= 0) return wanted;
    return polar(radius * (1 + gate.give * Math.min(1, beyond / FULL_PRESSURE)), direction);
  }

  /** Friction: partly where the last one stuck, partly new, and a little toward where it comes from. */
  #drawRest(from: Vec, release: number): Vec {
    const { scatter, carried, lag, second, outlier } = this.#part.spring;
    const fresh = (): Vec => ({ x: this.#chance.normal(), y: this.#chance.normal() });
    this.#carried = plus(times(this.#carried, carried), times(fresh(), Math.sqrt(1 - carried ** 2)));
    const stuck = times(plus(this.#carried, fresh()), scatter * Math.SQRT1_2);
    const isSecond = this.#chance.happens(second?.share ?? 0);
    const places = [
      stuck,
      sizeOf(from) === 0 ? ORIGIN : polar(lag, directionOf(from)),
      isSecond && second !== null ? second.from : ORIGIN,
      outlier?.release === release ? outlier.by : ORIGIN,
    ];
    return places.reduce(plus, this.#middle);
  }
}

/** Share of the way that is left so many seconds after letting go. */
function leftOf({ spring }: Part, seconds: number): number {
  const { slow } = spring;
  const snap = snapBack(spring.hertz, spring.damping, seconds);
  if (slow === null) return snap;
  if (!slow.creep) return Math.exp((-Math.log(50) * seconds) / slow.seconds);
  const rate = Math.log(50 * CREEPS) / slow.seconds;
  return (1 - CREEPS) * snap + CREEPS * Math.exp(-rate * seconds);
}

/** Free swing of a mass on a damped spring from rest at 1. */
function snapBack(hertz: number, damping: number, seconds: number): number {
  const omega = 2 * Math.PI * hertz;
  if (damping < 1) {
    const swing = omega * Math.sqrt(1 - damping ** 2);
    const fade = Math.exp(-damping * omega * seconds);
    return fade * (Math.cos(swing * seconds) + ((damping * omega) / swing) * Math.sin(swing * seconds));
  }
  const root = omega * Math.sqrt(damping ** 2 - 1 + 1e-9);
  const [slow, fast] = [-damping * omega + root, -damping * omega - root];
  return (slow * Math.exp(fast * seconds) - fast * Math.exp(slow * seconds)) / (slow - fast);
}
