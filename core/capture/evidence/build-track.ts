/** Turns the entries of a report log into typed columns of readings. */
import type { Descriptor } from '../../hid/control.ts';
import { parseDescriptor } from '../../hid/descriptor.ts';
import { readHex } from '../../hid/hex.ts';
import type { LogHeader } from '../../log/header.ts';
import type { LogVisitor, Mark } from '../../log/visitor.ts';
import { createReadingDecoder, type ReadingDecoder } from '../../pad/decode-reading.ts';
import { findLayout } from '../../pad/find-layout.ts';
import type { Profile } from '../../pad/profile.ts';
import { profileById } from '../../pad/profiles.ts';
import { createReadingSlot } from '../../pad/reading-slot.ts';
import { STICKS, type StickId } from '../../pad/stick.ts';
import { done, failed, type Problem, type Result } from '../../result.ts';
import { numberColumn } from './growing-column.ts';
import { InputColumns, inputReportId } from './input-columns.ts';
import { ReadingColumns } from './reading-columns.ts';
import type { StickTrack, Track } from './track.ts';

/** What is known of one report id once it was seen. */
interface Reports {
  readonly decoder: ReadingDecoder;
  readonly columns: ReadingColumns;
  readonly inputs: InputColumns;
}

interface PadKnown {
  readonly header: LogHeader;
  readonly descriptor: Descriptor | null;
  readonly profile: Profile | null;
}

/**
 * A `LogVisitor`; `finish` after the last entry. Which report carries the sticks is decided from those that really
 * came, so that each report id is decoded by itself until then. Memory: about 50 bytes a report with two sticks, and 16 for
 * each change of a trigger.
 */
export class TrackBuilder implements LogVisitor {
  readonly #slot = createReadingSlot();
  readonly #reports = new Map<number, Reports>();
  readonly #times = numberColumn();
  readonly #marks: Mark[] = [];
  readonly #gaps: { readonly t: number; readonly lost: number | null }[] = [];
  #known: Result<PadKnown> = failed('log-empty', 'No header was read; give a report log.');
  #duplicates = 0;
  #repeated = 0;
  #isCoarse = false;
  #unread = 0;
  #firstUnread: Problem | null = null;
  #damaged = 0;
  #firstDamaged: number | null = null;
  #lastUs = -1;
  #lastId = -1;
  #last = new Uint8Array(64);
  #lastLength = -1;

  header(header: LogHeader): void {
    this.#known = knowPad(header);
  }

  report(t: number, reportId: number, bytes: Uint8Array): void {
    if (!this.#known.ok) return;
    const isSame = this.#isSame(reportId, bytes);
    // No pad sends twice within a microsecond: the line was copied, and what counts readings would take one for two. But where two that
    // differ share a time it is the clock that ticks in larger steps.
    if (t === this.#lastUs) {
      this.#isCoarse ||= !isSame;
      if (!this.#isCoarse) {
        this.#repeated += 1;
        return;
      }
    }
    this.#lastUs = t;
    this.#times.push(t);
    if (isSame) this.#duplicates += 1;
    else this.#keep(reportId, bytes);
    const reports = this.#reports.get(reportId) ?? this.#meet(reportId, this.#known.value);
    const read = reports.decoder.read(reportId, bytes, this.#slot);
    if (read === 'reading') {
      reports.columns.add(t, this.#slot);
      reports.inputs.add(t, this.#slot);
    } else if (read !== 'other') {
      this.#unread += 1;
      this.#firstUnread ??= read;
    }
  }

  gap(t: number, lost: number | null): void {
    this.#gaps.push({ t, lost });
  }

  mark(mark: Mark): void {
    const last = this.#marks.at(-1);
    if (last?.t === mark.t && last.name === mark.name && JSON.stringify(last.detail) === JSON.stringify(mark.detail))
      this.#repeated += 1;
    else this.#marks.push(mark);
  }

  damaged(line: number): void {
    this.#damaged += 1;
    this.#firstDamaged ??= line;
  }

  /** Fails where the header names a profile or holds a descriptor that cannot be used; the builder is empty afterwards. */
  finish(): Result<Track> {
    if (!this.#known.ok) return this.#known;
    const { header } = this.#known.value;
    const { descriptor, profile } = this.#known.value;
    const layout = findLayout(descriptor, profile, this.#reports.size === 0 ? null : new Set(this.#reports.keys()));
    const tracks = new Map<number, Partial<Record<StickId, StickTrack>>>();
    const sticks: Partial<Record<StickId, StickTrack>> = {};
    for (const stick of STICKS) {
      const reportId = layout.stickSources[stick]?.x.reportId;
      if (reportId === undefined) continue;
      const columns = this.#reports.get(reportId)?.columns ?? new ReadingColumns(layout, reportId);
      const taken = tracks.get(reportId) ?? columns.take();
      tracks.set(reportId, taken);
      if (taken[stick] !== undefined) sticks[stick] = taken[stick];
    }
    const inputs = this.#reports.get(inputReportId(layout) ?? -1)?.inputs;
    return done({
      header,
      layout,
      sticks,
      ...(inputs === undefined ? {} : { inputs: inputs.take() }),
      reportTimes: this.#times.take(),
      duplicates: this.#duplicates,
      repeated: this.#isCoarse ? 0 : this.#repeated,
      marks: this.#marks,
      gaps: this.#gaps,
      damaged: { lines: this.#damaged, first: this.#firstDamaged },
      unread: { reports: this.#unread, first: this.#firstUnread },
    });
  }

  #meet(reportId: number, known: PadKnown): Reports {
    const layout = findLayout(known.descriptor, known.profile, new Set([reportId]));
    const reports = {
      decoder: createReadingDecoder(layout),
      columns: new ReadingColumns(layout, reportId),
      inputs: new InputColumns(layout, reportId),
    };
    this.#reports.set(reportId, reports);
    return reports;
  }

  #isSame(reportId: number, bytes: Uint8Array): boolean {
    return reportId === this.#lastId && bytes.length === this.#lastLength && this.#isLast(bytes);
  }

  #keep(reportId: number, bytes: Uint8Array): void {
    if (bytes.length > this.#last.length) this.#last = new Uint8Array(2 * bytes.length);
    this.#last.set(bytes);
    this.#lastLength = bytes.length;
    this.#lastId = reportId;
  }

  #isLast(bytes: Uint8Array): boolean {
    for (let i = 0; i < bytes.length; i += 1) if (bytes[i] !== this.#last[i]) return false;
    return true;
  }
}

function knowPad(header: LogHeader): Result<PadKnown> {
  const profile = header.profile === null ? null : profileById(header.profile);
  if (header.profile !== null && profile === null)
    return failed(
      'profile-unknown',
      `The log was recorded with the profile "${header.profile}", which this program does not have; use the program version that wrote the log.`,
      1,
    );
  if (header.descriptor === null) return done({ header, descriptor: null, profile });
  const bytes = readHex(header.descriptor);
  if (!bytes.ok) return badDescriptor(bytes.problem);
  const descriptor = parseDescriptor(bytes.value);
  return descriptor.ok ? done({ header, descriptor: descriptor.value, profile }) : badDescriptor(descriptor.problem);
}

function badDescriptor(problem: Problem): ReturnType<typeof failed> {
  return failed(problem.code, `The report descriptor in the log's header cannot be read: ${problem.says}`, 1);
}
