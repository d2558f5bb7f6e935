/** Why a pad's memory is not to be read or written now. */
import type { AskCode, PatchAsk } from '../../../core/image/ask.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { failed, type Problem } from '../../../core/result.ts';
import type { PadSession } from '../pads/pad-session.ts';

/** Null where its memory may be read. */
export function standsInTheWay(
  session: PadSession,
  { reads }: MemoryProtocol,
  { underway, captured }: { readonly underway: boolean; readonly captured: boolean },
): Problem | null {
  const { transport } = session.source.transport.identity;
  if (underway) return say('memory-underway', 'A memory session of this pad is under way; wait until it is over.');
  if (captured)
    return say('survey-underway', 'A survey of this pad is under way; end it before its memory is read or written.');
  if (reads.includes(transport)) return null;
  return say('memory-connection', `This pad's memory cannot be read over ${transport}; connect it by its cable.`);
}

/** Null where the pad may be written over its connection. */
export function notOver(session: PadSession, { writes }: MemoryProtocol): Problem | null {
  const { transport } = session.source.transport.identity;
  if (writes.includes(transport)) return null;
  return say('memory-connection', `This pad's memory is not written over ${transport}; connect it by its cable.`);
}

/** Null once everything that is asked was accepted by name. */
export function notAccepted(asks: readonly PatchAsk[], accepts: readonly AskCode[]): Problem | null {
  const open = asks.find(({ code }) => !accepts.includes(code));
  return open === undefined ? null : say('write-not-accepted', `${open.says} It must be accepted by itself first.`);
}

export function switchedOff(): Problem {
  return say('memory-off', 'Writing to this pad is switched off; switch it on for this pad first.');
}

export function otherPad(): ReturnType<typeof failed> {
  return failed('journal-other-pad', 'This journal is of another pad; connect the pad that the write was begun on.');
}

function say(code: string, says: string): Problem {
  return failed(code, says).problem;
}
