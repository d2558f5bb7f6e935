/** The one service: puts pads, surveys and settings together behind the contract; knows neither Electron nor HTTP. */
import path from 'node:path';
import type { Limits } from '../../core/findings/limits.ts';
import { done, failed, type Problem } from '../../core/result.ts';
import type { EventPayload } from '../../shared/contract.ts';
import { Vault } from '../store/image-vault.ts';
import type { BenchOptions } from './bench-options.ts';
import type { Bench } from './calls/bench-port.ts';
import type { Handlers } from './calls/call-handlers.ts';
import { EventFeed } from './calls/event-feed.ts';
import { ImageWork } from './memory/image-work.ts';
import { imageHandlers } from './memory/image-handlers.ts';
import { limitsInForce } from './measure/limits-in-force.ts';
import { KnownMaps } from './memory/known-maps.ts';
import { MeasureThread } from './measure/measure-thread.ts';
import { createMemory } from './memory/create-memory.ts';
import { padHandlers } from './pad-handlers.ts';
import { PadInHand } from './pads/pad-in-hand.ts';
import { PadSessions } from './pads/pad-sessions.ts';
import { KnownPads } from './pads/known-pads.ts';
import { ShownPlans } from './memory/shown-plans.ts';
import { SampleFeed } from './pads/sample-feed.ts';
import { GateChoices } from './surveys/gate-choices.ts';
import { GateTellers } from './surveys/gate-tellers.ts';
import { gateHandlers } from './gate-handlers.ts';
import { OpenedSurveys } from './surveys/opened-surveys.ts';
import { RunningSurveys } from './surveys/running-surveys.ts';
import { readLogPiece } from './surveys/survey-export.ts';
import { SurveyImport } from './surveys/survey-import.ts';
import { KeptSurveys } from './surveys/kept-surveys.ts';
import { tellLatest } from './calls/tell-latest.ts';

export function createBench(options: BenchOptions): Bench {
  const events = new EventFeed();
  const feed = new SampleFeed();
  const keptSurveys = new KeptSurveys(path.join(options.folder, 'surveys'));
  const measures = new MeasureThread(options.measureWorker);
  const limits = (): Limits => limitsInForce(options.settings.read().limits);
  const gates = new GateChoices(keptSurveys);
  const archive = new OpenedSurveys({
    kept: keptSurveys,
    gates,
    thread: measures,
    program: options.version,
    limits,
  });
  const imports = new SurveyImport(path.join(options.folder, 'incoming'), keptSurveys, (file) =>
    measures.measure(file, limits(), {}),
  );

  const vault = new Vault(path.join(options.folder, 'vault'));
  const maps = new KnownMaps(path.join(options.folder, 'maps'));
  const plans = new ShownPlans();
  const images = new ImageWork(vault, maps, plans, () => options.clock.now(), {
    survey: (survey) => keptSurveys.read(survey),
    kept: (name) => options.settings.read().mappings.find((one) => one.name === name) ?? null,
    ended: (journal) => memory.journals.ended(journal),
  });

  const busy = new Set<string>();
  const quiet = (who: string, wanted: boolean): void => {
    if (wanted) busy.add(who);
    else busy.delete(who);
    if (busy.size > 0) options.watcher?.pause();
    else options.watcher?.resume();
  };

  const tellPads = (): void => {
    hand.look();
    events.tell('pads.changed', hand.listed(registry.list()));
  };
  const tellSurveys = tellLatest(
    () => keptSurveys.list(),
    (surveys) => events.tell('surveys.changed', [...surveys]),
  );
  const tellMaps = tellLatest(
    () => maps.list(),
    (list) => events.tell('maps.changed', list),
  );
  // Why a list cannot be read is told to whoever asks for it.
  const tellImages = tellLatest(
    () => images.list(),
    (listed) => (listed.ok ? events.tell('images.changed', listed.value) : undefined),
  );
  const padSessions = new PadSessions({
    clock: options.clock,
    feed,
    loopDelay: options.loopDelay,
    tellHealth: (health: EventPayload<'pad.health'>) => events.tell('pad.health', health),
    delayed: (millis) => surveys.loopDelayed(millis),
    changed: (lost) => {
      if (lost !== null) registry.lost(lost);
      tellPads();
    },
  });
  const open = {
    isOpen: (pad: string) => padSessions.isOpen(pad),
    isInHand: (pad: string) => hand.isInHand(pad),
    unitOf: (pad: string) => padSessions.unitOf(pad),
  };
  const registry = new KnownPads(options.plugDemo, open, () => {
    hand.lookAnew();
    tellPads();
  });
  const surveys: RunningSurveys = new RunningSurveys({
    version: options.version,
    clock: options.clock,
    padSessions,
    keptSurveys,
    lock: options.lock,
    ...(options.files === undefined ? {} : { files: options.files }),
    quiet: (wanted) => quiet('survey', wanted),
    tell: (state) => events.tell('survey.state', state),
    listed: () => void tellSurveys(),
  });

  const memory = createMemory({
    options,
    padSessions,
    registry,
    vault,
    maps,
    plans,
    events,
    tellImages,
    tellMaps,
    openSurvey: (survey) => archive.open(survey),
    startOf: (survey) => keptSurveys.read(survey),
    isCaptured: (pad) => surveys.isUnderway(pad),
    quiet: (wanted) => quiet('memory', wanted),
  });

  const busyWith = (pad: string): Problem | null => {
    if (surveys.isUnderway(pad)) return surveyUnderway().problem;
    return memory.sessions.isBusy(pad) ? memoryUnderway().problem : null;
  };
  const hand: PadInHand = new PadInHand({
    clock: options.clock,
    registry,
    padSessions,
    busy: busyWith,
    tell: (state) => events.tell('hand.changed', state),
    takesPads: options.takesPads,
  });
  const endOf = async (pad: string): Promise<void> => {
    await memory.sessions.endOf(pad);
    await surveys.endOf(pad);
  };

  const handlers: Handlers = {
    'bench.hello': () => {
      const { shell, version, notices } = options;
      return done({ program: 'stickwright', version, shell, notices: [...notices] });
    },
    ...padHandlers({ registry, padSessions, hand, surveys, busy: busyWith, endOf }),
    'survey.start': (request) => (memory.sessions.isBusy(request.pad) ? memoryUnderway() : surveys.start(request)),
    'survey.say': (request) => surveys.say(request),
    'surveys.underway': () => done(surveys.underway()),
    'surveys.list': async () => done([...(await keptSurveys.list())]),
    'surveys.open': ({ survey }) => archive.open(survey),
    'surveys.propose': (request) => archive.propose(request),
    'surveys.strip': (request) => archive.strip(request),
    'surveys.import': async (request) => {
      const taken = await imports.take(request);
      if (!taken.ok) return taken;
      if (taken.value !== null) void tellSurveys();
      return done({ survey: taken.value });
    },
    'surveys.export': async ({ survey, from }) => {
      const log = await keptSurveys.logOf(survey);
      return log.ok ? readLogPiece(log.value, from) : log;
    },
    ...gateHandlers({
      choices: gates,
      tellers: new GateTellers({ kept: keptSurveys, opened: archive, thread: measures }),
      judged: (survey) => events.tell('survey.judged', { survey }),
    }),
    ...imageHandlers({
      images,
      vault,
      maps,
      measures,
      tellImages,
      tellMaps,
      now: () => options.clock.now(),
      openSurvey: (survey) => archive.open(survey),
    }),
    ...memory.handlers,
    'settings.read': () => done(options.settings.read()),
    'settings.write': (part) => {
      const written = options.settings.write(part);
      if (written.ok) events.tell('settings.changed', written.value);
      return written;
    },
  };

  registry.watch(options.watcher, options.clock);
  return {
    handle: async (name, request) => handlers[name](request),
    listen: (name, hear) => events.listen(name, hear),
    samples: (hear, ready = () => true) => feed.listen(hear, ready),
    async suspend() {
      hand.rest();
      await Promise.all([surveys.endAll(), memory.sessions.endAll()]);
      await padSessions.closeAll();
    },
    resume: () => hand.wake(),
    async close() {
      hand.rest();
      await Promise.all([surveys.endAll(), memory.sessions.endAll()]);
      await padSessions.stop();
      await options.watcher?.close();
      await imports.close();
      await measures.close();
    },
  };
}

function surveyUnderway(): ReturnType<typeof failed> {
  return failed('survey-underway', 'A survey of this pad is under way; end it first.');
}

function memoryUnderway(): ReturnType<typeof failed> {
  return failed('memory-underway', 'The memory of this pad is being read or written; wait until that is over.');
}
