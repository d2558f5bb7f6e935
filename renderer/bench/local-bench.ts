/** The bench over the local shell's socket: calls by number, events by name, sample batches as binary frames. */
import { failed, type Result } from '../../core/result.ts';
import type { BenchApi } from '../../shared/bench-api.ts';
import { calls, events, type CallName, type EventName, type Reply, type Request } from '../../shared/contract.ts';
import { benchFrameSchema, CLOSED, SOCKET_PATH, type BenchFrame, type PageFrame } from '../../shared/socket.ts';
import { dropToken, keepToken, takeAdmission, type Admission } from './admission.ts';
import type { Connection, HearConnection } from './connection.ts';

const TRY_AGAIN_MILLIS = 1_000;

/** Resolves when the page is let in, refused or finds nobody; a broken socket is opened again by itself. */
export async function openLocalBench(page: Window, hear: HearConnection): Promise<BenchApi> {
  const bench = new LocalBench(page, hear);
  await bench.settled;
  return bench;
}

class LocalBench implements BenchApi {
  readonly settled: Promise<void>;
  readonly #page: Window;
  readonly #hear: HearConnection;
  readonly #waiting = new Map<number, (result: Result<unknown>) => void>();
  readonly #hearers = new Map<EventName, Set<(payload: never) => void>>();
  readonly #batchHearers = new Set<(batch: Uint8Array) => void>();
  #admission: Admission;
  #connection: Connection = 'connecting';
  #socket: WebSocket | null = null;
  #nextCall = 0;
  #settle: () => void = () => undefined;

  constructor(page: Window, hear: HearConnection) {
    this.#page = page;
    this.#hear = hear;
    this.#admission = takeAdmission(page);
    this.settled = new Promise((resolve) => (this.#settle = resolve));
    hear('connecting');
    this.#open();
  }

  async call<N extends CallName>(name: N, request: Request<N>): Promise<Result<Reply<N>>> {
    if (this.#connection !== 'connected') return unreachable(this.#connection);
    const id = this.#nextCall;
    this.#nextCall += 1;
    const result = await new Promise<Result<unknown>>((resolve) => {
      this.#waiting.set(id, resolve);
      this.#send({ kind: 'call', id, name, request });
    });
    if (!result.ok) return result;
    const parsed = calls[name].reply.safeParse(result.value);
    return parsed.success
      ? { ok: true, value: parsed.data as Reply<N> }
      : failed('reply-invalid', `The bench’s answer to ${name} was not understood; reload the page.`);
  }

  listen: BenchApi['listen'] = (name, hear) => {
    const set = this.#hearers.get(name) ?? new Set();
    this.#hearers.set(name, set.add(hear));
    return () => void set.delete(hear);
  };

  samples(hear: (batch: Uint8Array) => void): () => void {
    this.#batchHearers.add(hear);
    return () => void this.#batchHearers.delete(hear);
  }

  #open(): void {
    if (this.#admission.ticket === undefined && this.#admission.token === undefined) {
      this.#say('refused');
      return;
    }
    const socket = new WebSocket(`ws://${this.#page.location.host}${SOCKET_PATH}`);
    socket.binaryType = 'arraybuffer';
    this.#socket = socket;
    socket.onopen = () => this.#send({ kind: 'enter', ...this.#admission });
    socket.onmessage = (message: MessageEvent<unknown>) => this.#take(message.data);
    socket.onclose = (event) => this.#closed(event.code);
  }

  #take(data: unknown): void {
    if (data instanceof ArrayBuffer) {
      const batch = new Uint8Array(data);
      for (const hear of this.#batchHearers) hear(batch);
      return;
    }
    const frame = readFrame(data);
    if (frame === null) return;
    if (frame.kind === 'entered') this.#entered(frame.token);
    else if (frame.kind === 'answer') {
      this.#waiting.get(frame.id)?.(frame.result);
      this.#waiting.delete(frame.id);
    } else this.#tell(frame.name, frame.payload);
  }

  #entered(token: string): void {
    keepToken(this.#page, token);
    this.#admission = { token };
    this.#say('connected');
  }

  #tell(name: string, payload: unknown): void {
    if (!Object.hasOwn(events, name)) return;
    const known = name as EventName;
    const parsed = events[known].safeParse(payload);
    if (parsed.success) for (const hear of this.#hearers.get(known) ?? []) hear(parsed.data as never);
  }

  #closed(code: number): void {
    this.#socket = null;
    const refused = code === CLOSED.refused;
    if (refused) {
      dropToken(this.#page);
      this.#admission = {};
    }
    this.#say(refused ? 'refused' : 'lost');
    for (const resolve of this.#waiting.values()) resolve(unreachable(this.#connection));
    this.#waiting.clear();
    if (!refused) setTimeout(() => this.#open(), TRY_AGAIN_MILLIS);
  }

  #send(frame: PageFrame): void {
    this.#socket?.send(JSON.stringify(frame));
  }

  #say(connection: Connection): void {
    if (this.#connection !== connection) {
      this.#connection = connection;
      this.#hear(connection);
    }
    if (connection !== 'connecting') this.#settle();
  }
}

function unreachable(connection: Connection): ReturnType<typeof failed> {
  return connection === 'refused'
    ? failed('bench-refused', 'This page is not let in; open the address that the bench prints, each is good once.')
    : failed('bench-unreachable', 'The bench does not answer; see whether it still runs, the page connects by itself.');
}

function readFrame(data: unknown): BenchFrame | null {
  if (typeof data !== 'string') return null;
  try {
    const parsed = benchFrameSchema.safeParse(JSON.parse(data));
    return parsed.success ? parsed.data : null;
  } catch {
    return null; // The bench sends JSON alone; anything else is not from it and is left.
  }
}
