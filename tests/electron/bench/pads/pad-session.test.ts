import { describe, expect, it } from 'vitest';
import { PadSession } from '../../../../electron/bench/pads/pad-session.ts';
import { PadStream } from '../../../../electron/bench/pads/pad-stream.ts';
import { SampleFeed } from '../../../../electron/bench/pads/sample-feed.ts';
import { FakeClock } from '../../../support/fake-clock.ts';
import { RecordingListener } from '../../../support/recording-listener.ts';
import { ScriptedTransport, sourceOf } from '../scripted-transport.ts';

/** Report 1: joystick, X and Y; report 2: joystick, Z and Rz beside them. */
const TWO_REPORTS =
  '05010904a101' + '85010930093115 0026ff00750895028102'.replaceAll(' ', '') + '8502093009310932093595048102' + 'c0';

function open(transport = new ScriptedTransport()) {
  const clock = new FakeClock(0);
  const states: string[] = [];
  const session: PadSession = new PadSession('pad-1', sourceOf(transport), {
    clock,
    stream: new PadStream('pad-1', clock, new SampleFeed()),
    changed: () => states.push(session.state),
  });
  return { clock, session, states, transport };
}

describe('pad session', () => {
  it('streams what the pad sends to every tap, in order', async () => {
    const { session, transport, states } = open();
    expect((await session.open()).ok).toBe(true);
    const tap = new RecordingListener();
    const end = session.tap(tap);
    transport.report(10, 0, 1, 2);
    transport.gap(20, 3);
    transport.report(30, 0, 3, 4);
    end();
    transport.report(40, 0, 5, 6);
    expect(tap.heard).toEqual(['report 10 0 0102', 'gap 20 3', 'report 30 0 0304']);
    expect(states).toEqual(['streaming']);
    expect(session.details).toMatchObject({ pad: 'pad-1', domain: 'reported', profile: null });
  });

  it('tells rate, gaps and silence', async () => {
    const { clock, session, transport } = open();
    await session.open();
    for (let ms = 0; ms < 2000; ms += 4) {
      clock.pass(4);
      transport.report(clock.micros(), 0, 1, 2);
    }
    transport.gap(clock.micros(), null);
    expect(session.health()).toMatchObject({ state: 'streaming', gaps: 1, lost: null, problem: null });
    expect(session.health().rateHz).toBeCloseTo(250, -1);
    clock.pass(1500);
    expect(session.health()).toMatchObject({ state: 'silent', rateHz: 0 });
  });

  it('says why a pad cannot be opened and leaves it closed', async () => {
    const transport = new ScriptedTransport();
    transport.refusal = { code: 'pad-busy', says: 'It is in use; close the other program.' };
    const { session, states } = open(transport);
    expect(await session.open()).toEqual({ ok: false, problem: transport.refusal });
    expect(states).toEqual(['closed']);
    expect(session.health()).toMatchObject({ state: 'closed', problem: { code: 'pad-busy' } });
    expect(transport.closes).toBe(1);
  });

  it('tells that the pad is lost, once, to all who listen', async () => {
    const { session, transport, states } = open();
    await session.open();
    const tap = new RecordingListener();
    session.tap(tap);
    transport.leave();
    transport.report(5, 0, 1, 1);
    expect(tap.heard).toEqual(['lost pad-gone']);
    expect(states).toEqual(['streaming', 'lost']);
    expect(session.health()).toMatchObject({ state: 'lost', problem: { code: 'pad-gone' } });
  });

  it('looks for the sticks in the reports that really come', async () => {
    const { session, transport } = open(new ScriptedTransport('two', {}, TWO_REPORTS));
    await session.open();
    expect(Object.keys(session.layout.sticks)).toEqual(['left', 'right']);
    transport.report(1, 1, 7, 8);
    expect(Object.keys(session.layout.sticks)).toEqual(['left']);
    transport.report(2, 2, 7, 8, 9, 10);
    expect(Object.keys(session.layout.sticks)).toEqual(['left', 'right']);
  });

  it('opens a pad whose descriptor is nonsense and says why no stick was found', async () => {
    const { session, transport } = open(new ScriptedTransport('odd', {}, 'ffffff'));
    expect((await session.open()).ok).toBe(true);
    transport.report(1, 0, 1);
    expect(session.layout.noSticks).toMatch(/\.$/u);
  });
});
