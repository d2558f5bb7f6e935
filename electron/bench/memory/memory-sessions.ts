/** Memory sessions: one a pad, under the pad's lock, never beside a capture; nothing is written without a confirmation. */
import { writeCautions } from '../../../core/image/cautions.ts';
import { differingBytes, memoryEnd } from '../../../core/image/differing-bytes.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { readMemory } from '../../../core/image/read-memory.ts';
import type { WriteJob } from '../../../core/image/write-job.ts';
import { writeMemory } from '../../../core/image/write-memory.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import { sha256Of } from '../../store/sha256.ts';
import type { MemoryNeeds } from './memory-needs.ts';
import { MemoryRun, type MemoryEnd, type MemoryState } from './memory-run.ts';
import type { PadSession } from '../pads/pad-session.ts';
import { orderWish, padIn, type Ready } from './order-wish.ts';
import { steadyDigest, type ReadImage, type WriteOrder } from './write-order.ts';
import { writeJournal } from './write-journal.ts';
import { notAccepted, otherPad, standsInTheWay } from './write-refusals.ts';
import { TOKEN_SECONDS, BenchConfirmations } from './bench-confirmations.ts';

interface Underway {
  readonly run: MemoryRun;
  readonly over: Promise<void>;
}

export class MemorySessions {
  readonly #ports: MemoryNeeds;
  readonly #underway = new Map<string, Underway>();
  readonly #states = new Map<string, MemoryState>();
  /** The image that was read last, until a write makes it an old one. */
  readonly #images = new Map<string, ReadImage>();
  /** The journal that the image read last was looked at for. */
  readonly #looked = new Map<string, string>();
  readonly #tokens: BenchConfirmations<WriteOrder>;

  constructor(ports: MemoryNeeds) {
    this.#ports = ports;
    this.#tokens = new BenchConfirmations(ports.clock);
  }

  isBusy(pad: string): boolean {
    return this.#underway.has(pad);
  }

  isWriting(pad: string): boolean {
    return this.#underway.get(pad)?.run.isWriting === true;
  }

  latest(pad: string): MemoryState | null {
    return this.#underway.get(pad)?.run.state ?? this.#states.get(pad) ?? null;
  }

  async about(pad: string): Promise<Result<Reply<'memory.about'>>> {
    const session = this.#ports.padSessions.session(pad);
    if (!session.ok) return session;
    const { identity } = session.value.source.transport;
    const protocol = await this.#ports.protocols.find(identity);
    const stands = protocol.ok ? this.#inTheWay(pad, session.value, protocol.value) : protocol.problem;
    const image = this.#images.get(pad);
    return done({
      pad,
      protocol: protocol.ok ? { id: protocol.value.id, name: protocol.value.name } : null,
      writing: await this.#ports.gate.isOn(session.value),
      mayWrite: protocol.ok && protocol.value.writes.includes(identity.transport),
      says: stands?.says ?? null,
      cautions: writeCautions(image?.map ?? null),
      image: image?.image ?? null,
      map: image?.map.id ?? null,
      journal: await this.#ports.journals.ofPad(identity, image?.unit),
      rotted: (await this.#ports.journals.rotted()).map(({ journal, problem }) => ({ journal, says: problem.says })),
    });
  }

  async allow(pad: string, writing: boolean): Promise<Result<Reply<'memory.about'>>> {
    const session = this.#ports.padSessions.session(pad);
    if (!session.ok) return session;
    const set = await this.#ports.gate.set(session.value, writing);
    return set.ok ? this.about(pad) : set;
  }

  read(pad: string): Promise<Result<MemoryState>> {
    return this.#start(pad, 'read', async (ready, run) => {
      const read = await this.#readPad(pad, ready, run);
      if (!read.ok) return failedEnd(read.problem);
      return { end: 'read', image: read.value.image, bytes: [], problem: null };
    });
  }

  show(pad: string, journal: string): Promise<Result<MemoryState>> {
    return this.#start(pad, 'show', async (ready, run) => {
      const broken = await this.#ports.journals.open(journal, padIn(ready.session));
      if (!broken.ok) return failedEnd(broken.problem);
      const read = await this.#readPad(pad, ready, run);
      if (!read.ok) return failedEnd(read.problem);
      const { head, before, after } = broken.value;
      if (head.pad.unit !== read.value.unit || head.map.id !== read.value.map.id) return failedEnd(otherPad().problem);
      const known = { now: read.value.bytes, unknown: [] };
      const end = memoryEnd(known, before, after, read.value.map);
      const bytes = end === 'differs' ? differingBytes(known, before, after, read.value.map) : [];
      this.#looked.set(pad, journal);
      if (end !== 'differs') await this.#ports.journals.settle(head, end);
      this.#ports.noted();
      return { end, image: read.value.image, bytes, problem: null };
    });
  }

  async preview({ pad, wish }: Request<'memory.preview'>): Promise<Result<Reply<'memory.preview'>>> {
    const ready = await this.#ready(pad);
    if (!ready.ok) return ready;
    const shut = await this.#ports.gate.refusal(ready.value.session, ready.value.protocol);
    if (shut !== null) return { ok: false, problem: shut };
    const read = this.#images.get(pad);
    if (read === undefined) return failed('memory-not-read', 'Read the memory of this pad first.');
    const order = await orderWish(this.#ports, wish, ready.value, read, this.#looked.get(pad));
    if (!order.ok) return order;
    const { patch, job, asks } = order.value;
    return done({
      token: this.#tokens.issue(pad, order.value),
      memory: steadyDigest(read),
      expiresInSeconds: TOKEN_SECONDS,
      changes: patch.changes,
      blocks: job.blocks.map(({ offset, new: bytes }) => ({ offset, bytes: bytes.length })),
      asks,
      cautions: writeCautions(read.map),
    });
  }

  /** The confirmation is used up by a write that begins, never by a refusal. */
  async write({ pad, token, accepts = [] }: Request<'memory.write'>): Promise<Result<MemoryState>> {
    const ready = await this.#ready(pad);
    if (!ready.ok) return ready;
    const shut = await this.#ports.gate.refusal(ready.value.session, ready.value.protocol);
    if (shut !== null) return { ok: false, problem: shut };
    const held = this.#tokens.check(pad, token);
    if (!held.ok) return held;
    const order = held.value;
    const open = notAccepted(order.asks, accepts);
    if (open !== null) return { ok: false, problem: open };
    const started = await this.#start(pad, order.doing, (now, run) => this.#writePad(pad, now, run, order), order);
    if (started.ok) this.#tokens.use(pad);
    return started;
  }

  abort(pad: string): Result<MemoryState> {
    const underway = this.#underway.get(pad);
    if (underway === undefined) return failed('memory-idle', 'No memory session of this pad is under way.');
    underway.run.abort();
    return done(underway.run.state);
  }

  /** Before a pad is closed or the program ends: a write that was begun is rolled back first. */
  async endOf(pad: string): Promise<void> {
    const underway = this.#underway.get(pad);
    underway?.run.abort();
    await underway?.over;
  }

  async endAll(): Promise<void> {
    await Promise.all([...this.#underway.keys()].map((pad) => this.endOf(pad)));
  }

  async #readPad(pad: string, { session }: Ready, run: MemoryRun): Promise<Result<ReadImage>> {
    const maps = await this.#ports.maps.read();
    this.#images.delete(pad);
    const read = await run.play((exchange) => readMemory(exchange, (id) => maps.find(id)));
    if (!read.ok) return read;
    const { image: bytes, map, unit } = read.value;
    session.learnUnit(unit);
    const kept = await this.#keep(session, run, bytes, 'read from the pad', map.id);
    if (!kept.ok) return kept;
    const found: ReadImage = { image: kept.value.sha256, bytes, map, unit };
    this.#images.set(pad, found);
    return done(found);
  }

  async #writePad(pad: string, { session }: Ready, run: MemoryRun, order: WriteOrder): Promise<MemoryEnd> {
    const { job, broken } = order;
    this.#images.delete(pad);
    const end = await run.play((exchange) => writeMemory(exchange, job));
    const [before, after] = broken === null ? [job.before, job.after] : [broken.before, broken.after];
    const now = broken === null ? end.end : memoryEnd(end, before, after, job.map);
    const bytes = now === 'differs' ? differingBytes(end, before, after, job.map) : [];
    const image = end.unknown.length === 0 ? await this.#keepAfter(session, run, end.now, job) : null;
    // The whole of it was just read: what is planned next is planned on it.
    if (image !== null) this.#images.set(pad, { image, bytes: end.now, map: job.map, unit: job.unit });
    return { end: now, image, bytes, problem: end.problem };
  }

  /** The memory as it stands, by its SHA-256; where nothing came of the write that is the image from before, which is kept. */
  async #keepAfter(session: PadSession, run: MemoryRun, now: Uint8Array, { before, map }: WriteJob) {
    const sha256 = sha256Of(now);
    if (sha256 === sha256Of(before)) return sha256;
    const kept = await this.#keep(session, run, now, 'after a write', map.id);
    return kept.ok ? sha256 : null;
  }

  async #keep(session: PadSession, run: MemoryRun, image: Uint8Array, why: string, map: string) {
    const { identity } = session.source.transport;
    const pad = { ...ownerOf(identity, run.unit), product: identity.product };
    const kept = await this.#ports.vault.keep(image, why, map, this.#ports.clock.now(), pad);
    if (kept.ok) this.#ports.kept();
    return kept;
  }

  async #start(
    pad: string,
    doing: MemoryState['doing'],
    body: (ready: Ready, run: MemoryRun) => Promise<MemoryEnd>,
    order: WriteOrder | null = null,
  ): Promise<Result<MemoryState>> {
    const ready = await this.#ready(pad);
    if (!ready.ok) return ready;
    const { session, protocol } = ready.value;
    const { transport } = session.source;
    const lost = (problem: Problem): void => this.#underway.get(pad)?.run.lost(problem);
    const release =
      transport.lockKey === undefined ? null : await this.#ports.lock.take(transport.identity, transport.lockKey, lost);
    if (release?.ok === false) return release;
    // Once more, with nothing awaited behind it: another page may have begun one meanwhile, and not every pad has a lock.
    const stands = this.#inTheWay(pad, session, protocol);
    if (stands !== null) {
      await release?.value();
      return { ok: false, problem: stands };
    }
    const { clock, tell } = this.#ports;
    const journal = writeJournal(this.#ports, transport.identity, protocol.id, order);
    const run: MemoryRun = new MemoryRun(pad, doing, {
      clock,
      session,
      protocol,
      tell,
      keep: (image, why, map) => this.#keep(session, run, image, why, map),
      journal: journal.note,
    });
    const over = this.#finish(pad, run, () => body(ready.value, run), release?.value ?? null, journal.over);
    this.#underway.set(pad, { run, over });
    this.#ports.quiet(true);
    return done(run.state);
  }

  async #finish(
    pad: string,
    run: MemoryRun,
    body: () => Promise<MemoryEnd>,
    release: (() => Promise<void>) | null,
    noted: () => void,
  ): Promise<void> {
    let end: MemoryEnd;
    try {
      end = await body();
    } catch (thrown) {
      const words = thrown instanceof Error ? thrown.message : String(thrown);
      end = failedEnd(
        failed('bench-fault', `The session broke off inside the program (${words}); read the pad again.`).problem,
      );
    }
    await release?.();
    noted();
    this.#underway.delete(pad);
    this.#ports.quiet(this.#underway.size > 0);
    run.finish(end);
    this.#states.set(pad, run.state);
  }

  async #ready(pad: string): Promise<Result<Ready>> {
    const session = this.#ports.padSessions.session(pad);
    if (!session.ok) return session;
    const protocol = await this.#ports.protocols.find(session.value.source.transport.identity);
    if (!protocol.ok) return protocol;
    const problem = this.#inTheWay(pad, session.value, protocol.value);
    return problem === null ? done({ session: session.value, protocol: protocol.value }) : { ok: false, problem };
  }

  #inTheWay(pad: string, session: PadSession, protocol: MemoryProtocol): Problem | null {
    return standsInTheWay(session, protocol, { underway: this.isBusy(pad), captured: this.#ports.isCaptured(pad) });
  }
}

function failedEnd(problem: Problem): MemoryEnd {
  return { end: 'failed', image: null, bytes: [], problem };
}
