/**
 * The frames of the local shell's socket. Text frames are JSON of one of the kinds below; a binary frame from the bench
 * is one sample batch (shared/sample-batch). The first frame of the page is `enter`; before it nothing else is answered.
 */
import { z } from 'zod';
import { problemSchema } from './schemas.ts';

/** Where the socket is served, on the page's own origin. */
export const SOCKET_PATH = '/bridge';

/** Close codes of the application's own range: why the bench ended the socket. */
export const CLOSED = {
  /** No `enter` in time, a used or unknown ticket, an unknown token. */
  refused: 4401,
  /** A frame that is none of the kinds below. */
  malformed: 4400,
  /** As many sockets of this page are open as may be; it is tried again until another is closed. */
  crowded: 4429,
  /** RFC 6455's own code: the program ends. */
  goingAway: 1001,
} as const;

/** The largest text frame in bytes: a piece of an import (700,000 letters of base64) and what stands around it. */
export const LARGEST_FRAME = 786_432;

const secret = z.string().min(16).max(128);

export const pageFrameSchema = z.discriminatedUnion('kind', [
  /** The one-time ticket of the address' fragment, or the token that it was exchanged for. */
  z.object({ kind: z.literal('enter'), ticket: secret.optional(), token: secret.optional() }),
  z.object({ kind: z.literal('call'), id: z.number().int().min(0), name: z.string().max(64), request: z.unknown() }),
]);

export const benchFrameSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('entered'), token: secret }),
  z.object({
    kind: z.literal('answer'),
    id: z.number().int(),
    result: z.discriminatedUnion('ok', [
      z.object({ ok: z.literal(true), value: z.unknown() }),
      z.object({ ok: z.literal(false), problem: problemSchema }),
    ]),
  }),
  z.object({ kind: z.literal('event'), name: z.string().max(64), payload: z.unknown() }),
]);

export type PageFrame = z.infer<typeof pageFrameSchema>;
export type BenchFrame = z.infer<typeof benchFrameSchema>;
