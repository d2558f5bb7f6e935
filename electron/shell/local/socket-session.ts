/** One page's socket: lets it in, passes calls, events and sample batches; the router checks what is in them. */
import type { RawData, WebSocket } from 'ws';
import { pageFrameSchema, CLOSED, type BenchFrame, type PageFrame } from '../../../shared/socket.ts';
import type { Bench } from '../../bench/calls/bench-port.ts';
import type { Router } from '../../bench/calls/router.ts';
import type { Seats } from './connection-limits.ts';
import type { Claim, Entrance } from './entrance.ts';

const ENTER_WITHIN_MILLIS = 5_000;
/** A page that is this far behind is shown no further batches until it has caught up. */
const MOST_UNSENT_BYTES = 262_144;

/** Who may come in, and how many at a time. */
export interface Hall {
  readonly entrance: Entrance;
  readonly seats: Seats;
}

export function serveSocket(socket: WebSocket, bench: Bench, router: Router, { entrance, seats }: Hall): void {
  const late = setTimeout(() => {
    refuse(socket, 'The page did not say who it is in time.');
  }, ENTER_WITHIN_MILLIS);
  let ends: (() => void)[] | null = null;
  // An error (a frame too large, a broken connection) is always followed by `close`, where everything ends.
  socket.on('error', () => undefined);
  socket.on('close', () => {
    clearTimeout(late);
    for (const end of ends ?? []) end();
  });
  const enter = (claim: Claim): void => {
    const token = ends === null ? entrance.enter(claim) : null;
    if (token === null) {
      refuse(socket, 'The ticket is used or not known.');
      return;
    }
    clearTimeout(late);
    const leave = seats.take(token);
    if (leave === null) {
      socket.close(CLOSED.crowded, 'This page is open too often; close one of its windows.');
      return;
    }
    send(socket, { kind: 'entered', token });
    ends = [
      leave,
      router.events((name, payload) => send(socket, { kind: 'event', name, payload })),
      bench.samples(
        (batch) => socket.send(batch),
        () => socket.bufferedAmount < MOST_UNSENT_BYTES,
      ),
    ];
  };
  socket.on('message', (data, isBinary) => {
    const frame = isBinary ? null : readFrame(data);
    if (frame === null) socket.close(CLOSED.malformed, 'The frame was not understood.');
    else if (frame.kind === 'enter') enter(frame);
    else if (ends === null) refuse(socket, 'Nothing is answered before the page is let in.');
    else void answer(socket, router, frame);
  });
}

async function answer(socket: WebSocket, router: Router, frame: Extract<PageFrame, { kind: 'call' }>): Promise<void> {
  const result = await router.answer(frame.name, frame.request);
  send(socket, {
    kind: 'answer',
    id: frame.id,
    result: result.ok ? { ok: true, value: result.value } : { ok: false, problem: result.problem },
  });
}

function send(socket: WebSocket, frame: BenchFrame): void {
  if (socket.readyState === socket.OPEN) socket.send(JSON.stringify(frame));
}

function refuse(socket: WebSocket, why: string): void {
  socket.close(CLOSED.refused, why);
}

function readFrame(data: RawData): PageFrame | null {
  const bytes = Array.isArray(data) ? Buffer.concat(data) : Buffer.from(data as Buffer);
  try {
    const parsed = pageFrameSchema.safeParse(JSON.parse(bytes.toString('utf8')));
    return parsed.success ? parsed.data : null;
  } catch {
    return null; // Not JSON: the caller ends the socket and says so.
  }
}
