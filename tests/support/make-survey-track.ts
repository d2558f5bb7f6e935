/** The readings of a short survey at 1 kHz, marked as the recorder marks them, without noise. */
import type { StickTrack, Track } from '../../core/capture/evidence/track.ts';
import type { Mark } from '../../core/log/visitor.ts';
import { rawPoint } from '../../core/mapping/raw-point.ts';
import type { Pair, StickFields, StickId } from '../../core/pad/stick.ts';
import { makeTrack } from './make-track.ts';

export interface SurveyWish {
  readonly fields: StickFields;
  readonly rest: Pair;
  readonly gate: number;
  readonly releases: number;
  readonly turnsEachWay: number;
  readonly sticks?: readonly StickId[];
  readonly marked?: boolean;
}

/** Each release: half a second of tilt in a spread direction, then a second of rest; each turn three seconds. */
export function makeSurveyTrack(wish: SurveyWish): Track {
  const { fields, rest, gate, releases, turnsEachWay, sticks = ['left'], marked = true } = wish;
  const points: Pair[] = [];
  const marks: Mark[] = [];
  const mark = (name: string, detail: Record<string, unknown>): void => {
    if (marked) marks.push({ t: 1000 * points.length, name, detail: { stick: sticks[0], ...detail } });
  };
  const hold = (difference: Pair, millis: number): void => {
    const { x, y } = rawPoint(rest, fields, difference);
    for (let i = 0; i < millis; i += 1) points.push({ x: Math.round(x), y: Math.round(y) });
  };
  const at = (radius: number, turns: number): Pair => ({
    x: radius * Math.cos(2 * Math.PI * turns),
    y: radius * Math.sin(2 * Math.PI * turns),
  });
  mark('capture', { purpose: 'rest', edge: 'begin' });
  for (let release = 0; release < releases; release += 1) {
    hold(at(0.8 * gate, release / releases), 500);
    mark('release', {});
    hold({ x: 0, y: 0 }, 1000);
  }
  mark('capture', { purpose: 'rest', edge: 'end' });
  mark('capture', { purpose: 'rim', edge: 'begin' });
  for (const way of [1, -1])
    // A little more than the turns asked for, so that the last one is whole wherever it is counted from.
    for (let step = 0; step <= 3000 * turnsEachWay + 300; step += 1) hold(at(gate, (way * step) / 3000), 1);
  mark('capture', { purpose: 'rim', edge: 'end' });
  hold({ x: 0, y: 0 }, 300);
  const track: StickTrack = {
    fields,
    t: Float64Array.from(points, (_, index) => 1000 * index),
    x: Float64Array.from(points, ({ x }) => x),
    y: Float64Array.from(points, ({ y }) => y),
    buttonDown: new Uint8Array(points.length),
  };
  const base = makeTrack({ reportTimes: [...track.t], marks });
  return {
    ...base,
    layout: { ...base.layout, sticks: Object.fromEntries(sticks.map((stick) => [stick, fields])) },
    sticks: Object.fromEntries(sticks.map((stick) => [stick, track])),
  };
}
