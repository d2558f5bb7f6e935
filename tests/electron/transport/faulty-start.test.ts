import { describe, expect, it } from 'vitest';
import { packedProfiles } from '../../../core/pad/packed-profiles.ts';
import type { Profile } from '../../../core/pad/profile.ts';
import { startSteps } from '../../../core/pad/start-steps.ts';
import type { Result } from '../../../core/result.ts';
import { PadSession } from '../../../electron/bench/pads/pad-session.ts';
import { PadStream } from '../../../electron/bench/pads/pad-stream.ts';
import { SampleFeed } from '../../../electron/bench/pads/sample-feed.ts';
import { FakeClock } from '../../support/fake-clock.ts';
import { FaultyTransport, type StepFault } from '../../support/faulty-transport.ts';

interface Started {
  readonly transport: FaultyTransport;
  readonly clock: FakeClock;
  readonly session: PadSession;
  readonly result: Result<void>;
}

async function start(profile: Profile, fault: { step: number; does: StepFault } | null): Promise<Started> {
  const transport = new FaultyTransport(profile, fault);
  const clock = new FakeClock();
  const session = new PadSession(
    'pad-1',
    { transport, problem: null, rule: null, hand: null },
    { clock, stream: new PadStream('pad-1', clock, new SampleFeed()), changed: () => undefined },
  );
  const opening = session.open();
  await clock.passSlowly(10_000);
  return { transport, clock, session, result: await opening };
}

/** Every step of every profile, and whether it is answered. */
const steps = packedProfiles.flatMap((profile) =>
  startSteps(profile, 'usb').map((one, step) => ({ id: profile.id, step, answered: one.reply !== null, profile })),
);

describe('the start of a pad that does something wrong', () => {
  it.each(packedProfiles)('succeeds where nothing is wrong: $id', async (profile) => {
    const { result, transport, clock } = await start(profile, null);
    expect(result).toEqual({ ok: true, value: undefined });
    expect(transport.isOpen).toBe(true);
    expect(clock.waiting).toBe(0);
  });

  it.each(steps)('ends in a named problem with the pad closed, whatever goes wrong: $id, step $step', async (one) => {
    const faults: readonly (readonly [StepFault, string])[] = [
      ['refused', 'pad-protocol'],
      ['left before', 'pad-gone'],
      ...(one.answered
        ? ([
            ['unanswered', 'pad-silent'],
            ['short', 'pad-silent'],
            ['stale', 'pad-silent'],
            ['flipped', 'pad-silent'],
          ] as const)
        : []),
    ];
    for (const [does, code] of faults) {
      const { result, transport, clock, session } = await start(one.profile, { step: one.step, does });
      expect(result.ok ? `${does}: started` : result.problem.code).toBe(code);
      expect(session.state).toBe('closed');
      expect(transport.isOpen).toBe(false);
      expect(clock.waiting).toBe(0);
    }
  });

  it.each(steps)(
    'ends in a named problem with the pad closed where it leaves after a step: $id, step $step',
    async ({ profile, step }) => {
      const { result, transport, clock } = await start(profile, { step, does: 'left after' });
      expect(result.ok ? 'started' : result.problem.code).toBe('pad-gone');
      expect(transport.isOpen).toBe(false);
      expect(clock.waiting).toBe(0);
    },
  );
});
