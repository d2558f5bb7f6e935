/** Writes whose end is not known: which pad each belongs to, and the images on both sides of it. */
import { patchedImage } from '../../../core/image/patched-image.ts';
import type { PadIdentity } from '../../../core/pad/identity.ts';
import { kinshipOf, type PadOwner } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import type { JournalHead, JournalStore, KeptJournal, RottedJournal } from '../../store/journal.ts';
import type { Vault } from '../../store/image-vault.ts';
import { sha256Of } from '../../store/sha256.ts';
import { padKey, unitKey } from '../pads/pad-key.ts';
import { otherPad } from './write-refusals.ts';

export type JournalSummary = Reply<'journals.list'>[number];

/** The write that was broken off first, whatever took it up since. */
export interface BrokenWrite {
  readonly id: string;
  readonly head: JournalHead;
  readonly before: Uint8Array;
  readonly after: Uint8Array;
  readonly changes: JournalHead['changes'];
}

export class OpenJournals {
  readonly #store: JournalStore;
  readonly #vault: Pick<Vault, 'read' | 'keep'>;
  /** The connected pad that it is, or the only one that it can be. */
  readonly #padOf: (pad: PadOwner) => string | null;
  /** Journals of sessions that run in this program: nothing broke off. */
  readonly #running = new Map<string, JournalHead>();

  constructor(store: JournalStore, vault: Pick<Vault, 'read' | 'keep'>, padOf: (pad: PadOwner) => string | null) {
    this.#store = store;
    this.#vault = vault;
    this.#padOf = padOf;
  }

  /** A session of this program writes it from now on. */
  begin(id: string, head: JournalHead): void {
    this.#running.set(id, head);
  }

  /** The session is over; what is still open of it broke off. */
  end(id: string): void {
    this.#running.delete(id);
  }

  /** The newest of each pad: it takes up what an older one left. */
  async list(): Promise<JournalSummary[]> {
    return (await this.#newest()).map((one) => this.#summary(one));
  }

  async all(): Promise<Reply<'journals.all'>> {
    const rotted = (await this.rotted()).map(({ journal, problem }) => ({ journal, says: problem.says }));
    return { open: await this.list(), rotted, ended: await this.#ended() };
  }

  /** A write whose end is known. */
  async ended(id: string): Promise<Result<JournalSummary>> {
    const found = (await this.#ended()).find(({ journal }) => journal === id);
    if (found !== undefined) return done(found);
    return failed('journal-unknown', 'This write is not among those that ended; choose one from the list.');
  }

  /** While its memory was not asked yet `unit` is undefined: then a journal of any pad like it. */
  async ofPad(identity: PadIdentity, unit: string | null | undefined): Promise<JournalSummary | null> {
    const isIts = ({ head }: KeptJournal): boolean =>
      unit === undefined ? padKey(head.pad) === padKey(identity) : unitKey(head.pad) === unitKey({ ...identity, unit });
    const found = (await this.#newest()).find(isIts);
    return found === undefined ? null : this.#summary(found);
  }

  /** Journals that cannot be understood: which pad each was of is then not known. */
  async rotted(): Promise<readonly RottedJournal[]> {
    return (await this.#store.open()).rotted;
  }

  /** The journal with its images; refused for another pad than its own. */
  async open(id: string, pad: PadOwner): Promise<Result<BrokenWrite>> {
    const found = (await this.#newest()).find((one) => one.id === id);
    if (found === undefined)
      return failed('journal-unknown', 'This journal is no longer open; choose one from the list.');
    const { head } = found;
    if (kinshipOf(head.pad, pad) === 'other') return otherPad();
    const { before: sha, after: target, changes } = head.origin ?? head;
    const before = await this.#vault.read(sha);
    if (!before.ok) return before;
    const after = patchedImage(before.value, changes);
    if (!after.ok || sha256Of(after.value) !== target)
      return failed(
        'journal-rotted',
        'The journal and the image that was kept before do not fit each other; read the pad and restore a kept image.',
      );
    return done({ id, head, before: before.value, after: after.value, changes });
  }

  /**
   * The memory came to one end of that write, and what is thereby over is closed: after it all journals of the pad; before it
   * those of that write alone, for it may have been begun over another one that broke off.
   */
  async settle(head: JournalHead, end: 'before' | 'after'): Promise<void> {
    await this.#close((one) => unitKey(one.pad) === unitKey(head.pad) && (end === 'after' || isOneWrite(one, head)));
  }

  async dismiss(id: string): Promise<Result<void>> {
    const isRotted = (await this.rotted()).some(({ journal }) => journal === id);
    if (isRotted) return this.#store.close(id);
    const found = (await this.#newest()).find((one) => one.id === id);
    if (found === undefined) return failed('journal-unknown', 'This journal is no longer open.');
    await this.#close((head) => unitKey(head.pad) === unitKey(found.head.pad));
    return done(undefined);
  }

  async #close(isOver: (head: JournalHead) => boolean): Promise<void> {
    const { journals } = await this.#store.open();
    for (const { id, head } of journals) if (isOver(head)) await this.#store.close(id);
  }

  async #ended(): Promise<JournalSummary[]> {
    return (await this.#store.over()).map((one) => this.#summary(one));
  }

  #summary({ id, head }: KeptJournal): JournalSummary {
    const { before, changes } = head.origin ?? head;
    const { at, pad: identity, map, origin } = head;
    const pad = this.#padOf(identity);
    return {
      journal: id,
      at,
      identity,
      unit: identity.unit,
      pad,
      map: map.id,
      restores: origin !== null,
      before,
      changes,
    };
  }

  async #newest(): Promise<KeptJournal[]> {
    const { journals } = await this.#store.open();
    const running = [...this.#running.values()];
    const broken = journals.filter(
      ({ id, head }) => !this.#running.has(id) && !running.some((one) => isOneWrite(one, head)),
    );
    // Of two pads without a serial number each has its own.
    return [...Map.groupBy(broken, ({ head }) => unitKey(head.pad)).values()].flatMap(([newest]) => newest ?? []);
  }
}

/** The same write, or one that takes it up. */
function isOneWrite(one: JournalHead, other: JournalHead): boolean {
  const [first, second] = [one.origin ?? one, other.origin ?? other];
  return first.before === second.before && first.after === second.after;
}
