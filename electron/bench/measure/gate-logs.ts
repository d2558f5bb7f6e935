/** What other logs tell of the gates that a log is judged with. */
import type { Track } from '../../../core/capture/evidence/track.ts';
import { gatesFromTrack, type KnownGates } from '../../../core/findings/gate-from-track.ts';
import type { GateSource, KnownGate } from '../../../core/findings/outline/known-gate.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readTrack } from './read-track.ts';

/** The log that a stick's gate is known from, and what it is of. */
export interface GateLog {
  readonly file: string;
  readonly from: GateSource;
}

export type GateLogs = Readonly<Partial<Record<StickId, GateLog>>>;
export type ToldGates = Readonly<Partial<Record<StickId, Result<KnownGate>>>>;

/** Each stick's gate, or why its log does not tell it; one log is read once for all sticks. */
export async function readGateLogs(logs: GateLogs): Promise<ToldGates> {
  const told: Partial<Record<StickId, Result<KnownGate>>> = {};
  const tracks = new Map<string, Result<Track>>();
  for (const stick of STICKS) {
    const log = logs[stick];
    if (log === undefined) continue;
    const track = tracks.get(log.file) ?? (await trackOf(log.file));
    tracks.set(log.file, track);
    told[stick] = track.ok ? tellGate(track.value, stick, log.from) : track;
  }
  return told;
}

export function tellGate(track: Track, stick: StickId, from: GateSource): Result<KnownGate> {
  const gate = gatesFromTrack(track, from)[stick];
  if (gate !== undefined) return done(gate);
  return failed(
    'gate-untold',
    `The other survey tells nothing of the gate of the ${stick} stick; take one with a rest and slow turns along the whole gate.`,
  );
}

/** The gates that are told. */
export function knownOf(told: ToldGates): KnownGates {
  return Object.fromEntries(
    STICKS.flatMap((stick) => {
      const gate = told[stick];
      return gate?.ok === true ? [[stick, gate.value] as const] : [];
    }),
  );
}

async function trackOf(file: string): Promise<Result<Track>> {
  const read = await readTrack(file);
  return read.ok ? done(read.value.track) : read;
}
