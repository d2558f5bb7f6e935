/** How a technician's thumb works: steady enough to trust, never twice the same. */
import type { Chance } from './chance.ts';

export interface HandStyle {
  /** σ of the direction of a push, degrees; never more than 8 off. */
  readonly aim: number;
  readonly pushSeconds: number;
  readonly holdSeconds: number;
  readonly reactSeconds: number;
  /** How far beyond the gate the thumb presses, share of its radius. */
  readonly pressure: number;
  /** How often it slides along the rim before it lets go. */
  readonly slides: number;
  readonly turnSeconds: number;
  /** How uneven the speed of a turn is, share of it. */
  readonly uneven: number;
  readonly sweepSeconds: number;
  /** Size of the tremor, share of the full tilt, and its frequency. */
  readonly tremor: number;
  readonly tremorHertz: number;
  /** Marks as a recorder without a guide writes them, or those of the guide. */
  readonly marks: 'prompted' | 'guided';
  /** The thumb has gone already when the mark of a prompt is written. */
  readonly early: boolean;
}

export function drawStyle(rateHz: number, chance: Chance): HandStyle {
  return {
    aim: chance.between(2, 4.5),
    pushSeconds: chance.between(0.15, 0.4),
    holdSeconds: chance.between(0.25, 0.7),
    reactSeconds: chance.between(0.25, 0.8),
    pressure: chance.between(0.06, 0.15),
    slides: chance.between(0, 0.2),
    // A slow pad is turned slowly, as its guide asks: less than 3° from report to report.
    turnSeconds: Math.max(chance.between(1.6, 3.2), 170 / rateHz),
    uneven: chance.between(0.08, 0.25),
    sweepSeconds: chance.between(2.8, 4.5),
    tremor: chance.between(0.001, 0.004),
    tremorHertz: chance.between(7, 11),
    marks: chance.pick(['prompted', 'guided']),
    early: chance.happens(0.3),
  };
}
