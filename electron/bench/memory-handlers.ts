/** The calls around the memory of a pad. */
import { done, failed, type Result } from '../../core/result.ts';
import type { CallName, Reply, Request } from '../../shared/contract.ts';
import type { JournalStore } from '../store/journal.ts';
import type { Handlers } from './call-handlers.ts';
import type { JournalDesk } from './journal-desk.ts';
import type { MapShelf } from './map-shelf.ts';
import type { MemoryDesk } from './memory-desk.ts';
import { padKey } from './pad-key.ts';

type MemoryCall = Extract<CallName, `memory.${string}` | `journals.${string}` | 'maps.prove'>;

export interface MemoryHandlerPorts {
  readonly desk: MemoryDesk;
  readonly journals: JournalDesk;
  readonly store: JournalStore;
  readonly maps: MapShelf;
  readonly openSurvey: (survey: string) => Promise<Result<Reply<'surveys.open'>>>;
  readonly startOf: (survey: string) => Promise<Result<{ readonly startedAt: string }>>;
  readonly noted: () => void;
  readonly mapped: () => void;
}

export function memoryHandlers(ports: MemoryHandlerPorts): Handlers<MemoryCall> {
  const { desk, journals, noted } = ports;
  return {
    'maps.prove': (request) => prove(ports, request),
    'memory.about': ({ pad }) => desk.about(pad),
    'memory.allow': ({ pad, writing }) => desk.allow(pad, writing),
    'memory.read': ({ pad }) => desk.read(pad),
    'memory.preview': (request) => desk.preview(request),
    'memory.write': ({ pad, token }) => desk.write(pad, token),
    'memory.abort': ({ pad }) => desk.abort(pad),
    'memory.show': ({ pad, journal }) => desk.show(pad, journal),
    'memory.latest': ({ pad }) => done({ state: desk.latest(pad) }),
    'journals.list': async () => done(await journals.list()),
    'journals.dismiss': async ({ journal }) => {
      const dismissed = await journals.dismiss(journal);
      if (!dismissed.ok) return dismissed;
      noted();
      return done(await journals.list());
    },
  };
}

/** A write with the map was read back and compared to its end, and the survey of that pad came after it. */
async function prove(
  { maps, store, openSurvey, startOf, mapped }: MemoryHandlerPorts,
  { map: id, survey }: Request<'maps.prove'>,
): Promise<Result<Reply<'maps.prove'>>> {
  const map = await maps.find(id);
  if (!map.ok) return map;
  const [opened, started] = [await openSurvey(survey), await startOf(survey)];
  if (!opened.ok) return opened;
  if (!started.ok) return started;
  const isWritten = (await store.over()).some(({ head, steps }) => {
    const last = steps.at(-1);
    const isAfter = last?.step === 'end' && last.end === 'after' && head.origin?.target !== 'before';
    return (
      isAfter &&
      head.map.id === id &&
      padKey(head.pad) === padKey(opened.value.identity) &&
      last.at < started.value.startedAt
    );
  });
  if (!isWritten)
    return failed(
      'map-not-written',
      `No write with the map ${id} to this pad was read back before that survey; write first, then take a survey.`,
    );
  const saved = await maps.save({ ...map.value, proof: 'proven' });
  if (saved.ok) mapped();
  return saved;
}
