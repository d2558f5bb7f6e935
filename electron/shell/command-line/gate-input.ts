/** What another survey tells of the gates, as `--gate-from LOG --gate-as WHAT` gives it. */
import { gatesFromTrack, type KnownGates } from '../../../core/findings/gate-from-track.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { GATE_SOURCES, type GateWord } from './gate-words.ts';
import { readLog } from './log-input.ts';
import type { Terminal } from './terminal.ts';

export interface GateOptions {
  readonly gateFrom?: string;
  readonly gateAs?: GateWord;
}

/** Nothing is known where nothing is asked; a log that tells of no gate is a problem, never an unknown gate without a word. */
export async function readGates(terminal: Terminal, { gateFrom, gateAs }: GateOptions): Promise<Result<KnownGates>> {
  if (gateFrom === undefined && gateAs === undefined) return done({});
  if (gateFrom === undefined || gateAs === undefined)
    return failed(
      'gate-half-said',
      'A known gate needs both --gate-from LOG and --gate-as, which says what was surveyed in it.',
    );
  const track = await readLog(terminal, gateFrom);
  if (!track.ok) return track;
  const gates = gatesFromTrack(track.value, GATE_SOURCES[gateAs]);
  return Object.keys(gates).length > 0
    ? done(gates)
    : failed('gate-untold', `${gateFrom} tells of no gate: it needs a rest and a covered rim of a stick.`);
}
