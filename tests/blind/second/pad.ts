/** A pad whose reports go into a log as they would arrive: evenly, late by a little, on change only, or not at all. */
import type { LogVisitor } from '../../../core/log/visitor.ts';
import { Chance } from './chance.ts';
import { OneStick, type Drive } from './one-stick.ts';
import { packReport } from './pack-report.ts';
import type { Side, Unit } from './unit.ts';

const REPORT_ID = 1;
const NO_HAT = 8;
const FULL_TRIGGER = 255;

export class Pad {
  readonly sticks: Readonly<Record<Side, OneStick>>;
  readonly #unit: Unit;
  readonly #log: LogVisitor;
  readonly #chance: Chance;
  /** Numbers of the buttons that are down. */
  readonly buttons = new Set<number>();
  hat = NO_HAT;
  /** How far the triggers are pulled, 0 to 1. */
  readonly pulled = { left: 0, right: 0 };
  /** A trigger that does not come back was pulled once. */
  #wasPulled = false;
  #even = 0;
  #lastArrival = 0;
  #lastBytes: Uint8Array | null = null;
  #toLose = 0;
  #lost = 0;

  constructor(unit: Unit, log: LogVisitor) {
    const { plan, parts, stored, seed } = unit;
    this.#unit = unit;
    this.#log = log;
    this.#chance = new Chance(seed, 'link');
    this.sticks = {
      left: new OneStick(plan, parts.left, stored.left, seed, 'left'),
      right: new OneStick(plan, parts.right, stored.right, seed, 'right'),
    };
  }

  /** The next report is made at this time, seconds. */
  get next(): number {
    return this.#even;
  }

  /** Makes the next report. */
  step(drives: Readonly<Record<Side, Drive>>): void {
    const { plan } = this.#unit;
    const t = this.#even;
    this.#even += 1 / plan.rateHz;
    const [left, right] = [this.sticks.left.counts(t, drives.left), this.sticks.right.counts(t, drives.right)];
    const bytes = packReport(plan, {
      axes: [left.x, left.y, right.x, right.y],
      triggers: [this.#trigger('left'), this.#trigger('right')],
      hat: this.hat,
      buttons: [...this.buttons].reduce((bits, button) => bits | (1 << (button - 1)), 0),
    });
    if (plan.onChange && this.#lastBytes !== null && areEqual(bytes, this.#lastBytes)) return;
    this.#lastBytes = bytes;
    this.#send(t, bytes);
  }

  #send(t: number, bytes: Uint8Array): void {
    const { loss, jitter } = this.#unit.plan;
    if (loss !== null && this.#toLose === 0 && this.#chance.happens(1 / loss.once)) this.#toLose = loss.run;
    if (this.#toLose > 0) {
      this.#toLose -= 1;
      this.#lost += 1;
      return;
    }
    const late = t + Math.abs(jitter * this.#chance.normal());
    this.#lastArrival = Math.max(this.#lastArrival, Math.round(late * 1e6));
    if (this.#lost > 0 && loss?.told === true) this.#log.gap(this.#lastArrival, this.#lost);
    this.#lost = 0;
    this.#log.report(this.#lastArrival, REPORT_ID, bytes);
  }

  /** Microseconds that a mark at this time is written at: after all that has arrived. */
  markTime(seconds: number): number {
    this.#lastArrival = Math.max(this.#lastArrival, Math.round(seconds * 1e6));
    return this.#lastArrival;
  }

  #trigger(side: Side): number {
    const { trigger } = this.#unit.plan;
    const pulled = this.pulled[side];
    if (trigger?.side !== side) return Math.round(FULL_TRIGGER * pulled);
    if (trigger.stays === 'dead') return 0;
    this.#wasPulled ||= pulled > 0.9;
    return Math.round(FULL_TRIGGER * Math.max(pulled, this.#wasPulled ? trigger.stays : 0));
  }
}

function areEqual(one: Uint8Array, other: Uint8Array): boolean {
  return one.every((byte, index) => byte === other[index]);
}
