/** When a memory map is proven: a write with it was read back to its end, and a survey of that pad came after it. */
import { failed, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import type { JournalStore, KeptJournal } from '../../store/journal.ts';
import type { KnownMaps } from './known-maps.ts';
import { padKey } from '../pads/pad-key.ts';

export interface ProofPorts {
  readonly store: Pick<JournalStore, 'over'>;
  readonly maps: Pick<KnownMaps, 'find' | 'save'>;
  readonly openSurvey: (survey: string) => Promise<Result<Reply<'surveys.open'>>>;
  readonly startOf: (survey: string) => Promise<Result<{ readonly startedAt: string }>>;
}

/** That the survey agrees with what was written is the technician's word; here it must at least have measured a stick. */
export async function proveMap(
  { maps, store, openSurvey, startOf }: ProofPorts,
  { map: id, survey }: Request<'maps.prove'>,
): Promise<Result<Reply<'maps.prove'>>> {
  const map = await maps.find(id);
  if (!map.ok) return map;
  const [opened, started] = [await openSurvey(survey), await startOf(survey)];
  if (!opened.ok) return opened;
  if (!started.ok) return started;
  const key = padKey(opened.value.identity);
  const before = (await store.over()).filter(
    ({ head, steps }) =>
      head.map.id === id && padKey(head.pad) === key && (steps.at(-1)?.at ?? '') < started.value.startedAt,
  );
  if (!isWritten(before))
    return failed(
      'map-not-written',
      `No write with the map ${id} to this pad was read back before that survey; write first, then take a survey.`,
    );
  if (!Object.values(opened.value.report.sticks).some(({ rest, rim }) => rest !== null && rim !== null))
    return failed(
      'survey-thin',
      'That survey measured no stick at rest and along its gate, so that nothing can agree; take one that does.',
    );
  return maps.save({ ...map.value, proof: 'proven' });
}

/** The last one that came to its end stands in the pad, unless it brought back what was before. */
function isWritten(journals: readonly KeptJournal[]): boolean {
  const ends = journals.flatMap(({ head, steps }) => {
    const last = steps.at(-1);
    return last?.step === 'end' && last.end === 'after' ? [{ at: last.at, target: head.origin?.target }] : [];
  });
  const newest = ends.toSorted((a, b) => (a.at < b.at ? -1 : 1)).at(-1);
  return newest !== undefined && newest.target !== 'before';
}
