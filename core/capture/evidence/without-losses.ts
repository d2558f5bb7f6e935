/** A log without the readings in which the signal had left the stick. */
import type { StickId } from '../../pad/stick.ts';
import { findSignalLosses, type SignalLoss } from './signal-losses.ts';
import type { StickTrack, Track } from './track.ts';

interface Parted {
  readonly track: Track;
  readonly losses: Readonly<Partial<Record<StickId, readonly SignalLoss[]>>>;
}

/** Looking through a log takes a pass over all of it; every measure asks for the same. */
const known = new WeakMap<Track, Parted>();

/**
 * The same log where nothing was lost. What is lost is judged by itself (`find-signal-lost.ts`); everything else is measured of what the
 * stick did. Between the readings about a loss nothing is known.
 */
export function withoutLosses(track: Track): Track {
  return parted(track).track;
}

export function lossesOf(track: Track, stick: StickId): readonly SignalLoss[] {
  return parted(track).losses[stick] ?? [];
}

function parted(track: Track): Parted {
  const before = known.get(track);
  if (before !== undefined) return before;
  const found = Object.entries(track.sticks).map(([stick, readings]) => {
    const losses = findSignalLosses(readings);
    return { stick, losses, readings: losses.length === 0 ? readings : without(readings, losses) };
  });
  const losses = Object.fromEntries(found.map((one) => [one.stick, one.losses]));
  const isWhole = found.every((one) => one.losses.length === 0);
  const clean = isWhole
    ? track
    : { ...track, sticks: Object.fromEntries(found.map(({ stick, readings }) => [stick, readings])) };
  const result = { track: clean, losses };
  known.set(track, result);
  known.set(clean, result);
  return result;
}

function without(readings: StickTrack, losses: readonly SignalLoss[]): StickTrack {
  const isLost = new Uint8Array(readings.t.length);
  for (const { from, to } of losses) isLost.fill(1, from, to);
  const kept = (_: number, i: number): boolean => isLost[i] === 0;
  return {
    ...readings,
    t: readings.t.filter(kept),
    x: readings.x.filter(kept),
    y: readings.y.filter(kept),
    buttonDown: readings.buttonDown.filter(kept),
  };
}
