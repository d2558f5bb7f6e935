/** What a recorder's marks say about one stick, whatever order and end they have. */
import type { Mark } from '../../log/visitor.ts';
import type { StickId } from '../../pad/stick.ts';
import { lastOfEach, partSurveys } from './part-surveys.ts';
import { DWELL_US } from './still-spans.ts';
import type { Purpose } from './track.ts';

export interface MarkedSpan {
  readonly purpose: Purpose;
  readonly startUs: number;
  readonly endUs: number;
}

const PURPOSES: ReadonlySet<unknown> = new Set<Purpose>(['rest', 'rim', 'travel', 'flick', 'inputs', 'disturbance']);

/** Marks that name this stick, or none. */
export function marksOf(marks: readonly Mark[], stick: StickId): Mark[] {
  return marks.filter(({ detail }) => (detail['stick'] ?? stick) === stick);
}

/** Captures of one stick from their marks (see `everySpan`); of a log that holds several surveys of it, those of the last. */
export function markedSpans(marks: readonly Mark[], stick: StickId, endUs: number): MarkedSpan[] {
  return lastOfEach(everySpan(marks, stick, endUs));
}

/** How many surveys of one stick the marks of a whole log hold. */
export function countSurveys(marks: readonly Mark[], stick: StickId, endUs: number): number {
  return partSurveys(everySpan(marks, stick, endUs)).length;
}

/**
 * Captures of one stick from their begin and end marks. One that is not ended lasts to the next begin of any capture,
 * else to the end of the log; an end without its begin is passed over. `marks` are those of the whole log.
 */
function everySpan(marks: readonly Mark[], stick: StickId, endUs: number): MarkedSpan[] {
  const edges = marks.filter(({ name, detail }) => name === 'capture' && PURPOSES.has(detail['purpose']));
  const own = marksOf(edges, stick);
  const spans: MarkedSpan[] = [];
  let open: Mark | null = null;
  const close = (begin: Mark, end: Mark | null): void => {
    const next = edges.slice(edges.indexOf(begin) + 1).find((mark) => !isEnd(mark));
    const last = end !== null && isEnd(end) ? end.t : (next?.t ?? endUs);
    spans.push({ purpose: begin.detail['purpose'] as Purpose, startUs: begin.t, endUs: Math.max(begin.t, last) });
  };
  for (const mark of own) {
    if (isEnd(mark) && open?.detail['purpose'] !== mark.detail['purpose']) continue;
    if (open !== null) close(open, mark);
    open = isEnd(mark) ? null : mark;
  }
  if (open !== null) close(open, null);
  return spans;
}

/** Stretches that a recorder marked as `still`: settled and untouched, beyond any dwell. One that is not ended is none. */
export function markedStills(marks: readonly Mark[], stick: StickId): { startUs: number; endUs: number }[] {
  const own = marksOf(marks, stick).filter(({ name }) => name === 'still');
  return own.flatMap((begin, index) => {
    const end = own[index + 1];
    return isEnd(begin) || end === undefined || !isEnd(end) ? [] : [{ startUs: begin.t, endUs: end.t }];
  });
}

/** True where a recorder marked captures of the stick. */
export function hasCaptureMarks(marks: readonly Mark[]): boolean {
  return marks.some(({ name }) => name === 'capture');
}

/** When the first release or dwell was marked; null where none was. */
export function firstReleaseUs(marks: readonly Mark[]): number | null {
  return marks.find(({ name }) => name === 'release' || name === 'dwell')?.t ?? null;
}

/** Times of the marks of one name in a span, in order. */
export function timesOf(marks: readonly Mark[], name: string, span: MarkedSpan): number[] {
  return marks.filter((mark) => mark.name === name && isIn(span, mark.t)).map((mark) => mark.t);
}

/** Times at which the hand asked for the last release, turn, sweep or flick to be dropped. */
export function repeatsOf(
  marks: readonly Mark[],
  of: 'release' | 'turn' | 'sweep' | 'flick',
  span: MarkedSpan,
): number[] {
  return marks
    .filter((mark) => mark.name === 'repeat' && mark.detail['of'] === of && isIn(span, mark.t))
    .map((mark) => mark.t);
}

/** What is left when each repeat drops the last that was there by then; `timeOf` says since when it was. */
export function withoutRepeated<T>(taken: readonly T[], repeats: readonly number[], timeOf: (one: T) => number): T[] {
  const kept = [...taken];
  for (const t of repeats) {
    const last = kept.findLastIndex((one) => timeOf(one) <= t);
    if (last >= 0) kept.splice(last, 1);
  }
  return kept;
}

/** Dwells as marked: a begin with its end. A begin before another begin was given up; a last one may lack its end. */
export function markedDwells(marks: readonly Mark[], span: MarkedSpan): { startUs: number; endUs: number }[] {
  const dwells: { startUs: number; endUs: number }[] = [];
  let since: number | null = null;
  for (const { t, name, detail } of marks) {
    if (!isIn(span, t) || (name !== 'dwell' && name !== 'release')) continue;
    if (name === 'dwell' && detail['edge'] === 'end') {
      if (since !== null && t > since) dwells.push({ startUs: since, endUs: t });
      since = null;
    } else since = name === 'dwell' ? t : null;
  }
  if (since !== null && span.endUs - since >= DWELL_US) dwells.push({ startUs: since, endUs: span.endUs });
  return dwells;
}

function isIn(span: MarkedSpan, t: number): boolean {
  return t >= span.startUs && t <= span.endUs;
}

function isEnd(mark: Mark): boolean {
  return mark.detail['edge'] === 'end';
}
