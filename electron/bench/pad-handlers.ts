/** The calls around pads: which there are, the one in hand, simulated ones and their hands and cables. */
import { demoNames, demos } from '../../core/simulate/demos.ts';
import { done, failed, type Problem } from '../../core/result.ts';
import type { Handlers } from './calls/call-handlers.ts';
import type { PadInHand } from './pads/pad-in-hand.ts';
import type { PadSessions } from './pads/pad-sessions.ts';
import { notSimulated, type KnownPads } from './pads/known-pads.ts';
import type { RunningSurveys } from './surveys/running-surveys.ts';

export interface PadHandlerParts {
  readonly registry: KnownPads;
  readonly padSessions: PadSessions;
  readonly hand: PadInHand;
  readonly surveys: Pick<RunningSurveys, 'follow'>;
  /** Why nobody may take the pad away, as a sentence; null where somebody may. */
  readonly busy: (pad: string) => Problem | null;
  /** Ends what is under way on the pad, before it is closed. */
  readonly endOf: (pad: string) => Promise<void>;
}

type PadCalls =
  | 'pads.list'
  | 'pads.open'
  | 'pads.close'
  | 'pads.inHand'
  | 'pads.take'
  | 'pads.plugDemo'
  | 'pads.demos'
  | 'demo.hand'
  | 'demo.unplug'
  | 'demo.plugIn'
  | 'demo.takeAway';

export function padHandlers({
  registry,
  padSessions,
  hand,
  surveys,
  busy,
  endOf,
}: PadHandlerParts): Handlers<PadCalls> {
  return {
    'pads.list': () => done(hand.listed(registry.list())),
    'pads.open': ({ pad }) => {
      const source = registry.find(pad);
      return source.ok ? padSessions.open(pad, source.value) : source;
    },
    'pads.close': async ({ pad }) => {
      hand.putDown(pad);
      await endOf(pad);
      await padSessions.close(pad);
      return done({});
    },
    'pads.inHand': () => done(hand.state),
    'pads.take': ({ pad }) => hand.take(pad),
    'pads.plugDemo': ({ name }) => registry.plug(name),
    'pads.demos': () => done(demoNames.map((name) => ({ name, says: demos[name].says }))),
    'demo.hand': ({ pad, stick, does }) => {
      const source = registry.find(pad);
      if (!source.ok) return source;
      const simulated = source.value.hand;
      if (simulated === null)
        return failed('pad-not-simulated', 'Only a simulated pad has a hand; move this stick yourself.');
      surveys.follow(pad, stick, does === 'follow');
      simulated.does(stick, does === 'follow' ? 'rest' : does);
      hand.moves(pad, stick, does);
      return done({});
    },
    'demo.unplug': ({ pad }) => registry.cable(pad, false),
    'demo.plugIn': ({ pad }) => registry.cable(pad, true),
    'demo.takeAway': async ({ pad }) => {
      const source = registry.find(pad);
      if (!source.ok) return source;
      if (source.value.cable === undefined) return notSimulated();
      const problem = busy(pad);
      if (problem !== null) return { ok: false, problem };
      hand.putDown(pad);
      await padSessions.close(pad);
      return registry.takeAway(pad);
    },
  };
}
