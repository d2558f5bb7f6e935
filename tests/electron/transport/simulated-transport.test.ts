import { describe, expect, it } from 'vitest';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { createDemoPlug } from '../../../electron/transport/plug-demo.ts';
import { SimulatedTransport } from '../../../electron/transport/simulated-transport.ts';
import { FakeClock } from '../../support/fake-clock.ts';
import { RecordingListener } from '../../support/recording-listener.ts';

function plug(clock: FakeClock): SimulatedTransport {
  return new SimulatedTransport('demo-1', createSimulatedPad('healthy', 1), clock);
}

describe('the simulated transport', () => {
  it('hands over a thousand reports a second, stamped by the clock it was given, in order', async () => {
    const clock = new FakeClock();
    const listener = new RecordingListener();
    const began = clock.micros();
    expect((await plug(clock).open(listener)).ok).toBe(true);
    clock.pass(1000);
    expect(Math.abs(listener.reportTimes.length - 1000)).toBeLessThanOrEqual(1);
    expect(listener.reportTimes[0]).toBeGreaterThan(began);
    expect(listener.reportTimes.at(-1)).toBeLessThanOrEqual(clock.micros());
    expect(listener.reportTimes).toEqual([...listener.reportTimes].sort((a, b) => a - b));
  });

  it('tells nothing more and waits for nothing after it was closed, even from within a report', async () => {
    const clock = new FakeClock();
    const transport = plug(clock);
    let reports = 0;
    await transport.open({
      report: () => {
        reports += 1;
        if (reports === 3) void transport.close();
      },
      gap: () => undefined,
      lost: () => undefined,
    });
    clock.pass(1000);
    expect(reports).toBe(3);
    expect(clock.waiting).toBe(0);
    await transport.close();
  });

  it('goes on from now when it is opened again', async () => {
    const clock = new FakeClock();
    const transport = plug(clock);
    await transport.open(new RecordingListener());
    clock.pass(100);
    await transport.close();
    clock.pass(60_000);
    const again = new RecordingListener();
    const openedAt = clock.micros();
    await transport.open(again);
    clock.pass(100);
    expect(again.reportTimes[0]).toBeGreaterThan(openedAt);
    expect(Math.abs(again.reportTimes.length - 100)).toBeLessThanOrEqual(1);
    expect(again.heard.some((line) => line.startsWith('gap'))).toBe(false);
  });

  it('says gap, how much unknown, when the clock leapt on', async () => {
    const clock = new FakeClock();
    let sleptMicros = 0;
    const transport = new SimulatedTransport('demo-1', createSimulatedPad('healthy', 2), {
      micros: () => clock.micros() + sleptMicros,
      now: () => clock.now(),
      after: (millis, call) => clock.after(millis, call),
    });
    const heard = new RecordingListener();
    await transport.open(heard);
    clock.pass(100);
    sleptMicros = 10_000_000;
    clock.pass(100);
    const gaps = heard.heard.filter((line) => line.startsWith('gap'));
    expect(gaps).toHaveLength(1);
    expect(gaps[0]).toMatch(/ null$/);
    expect(Math.abs(heard.reportTimes.length - 196)).toBeLessThanOrEqual(6);
  });

  it('is lost when its cable is pulled, and can be opened again once it is plugged in', async () => {
    const clock = new FakeClock();
    const transport = plug(clock);
    const listener = new RecordingListener();
    await transport.open(listener);
    clock.pass(50);
    transport.unplug();
    const told = listener.heard.length;
    clock.pass(50);
    expect(listener.problems.map((problem) => problem.code)).toEqual(['pad-gone']);
    expect(listener.heard).toHaveLength(told);
    const refused = await transport.open(new RecordingListener());
    expect(refused.ok ? null : refused.problem.code).toBe('pad-gone');
    transport.plugIn();
    expect((await transport.open(new RecordingListener())).ok).toBe(true);
  });

  it('refuses to be opened twice', async () => {
    const transport = plug(new FakeClock());
    await transport.open(new RecordingListener());
    const second = await transport.open(new RecordingListener());
    expect(second.ok ? null : second.problem.code).toBe('pad-busy');
  });
});

describe('plugging demos in', () => {
  it('gives each pad a hand and a seed of its own, and refuses a name that it does not know', () => {
    const plugDemo = createDemoPlug(new FakeClock(), 1);
    const first = plugDemo('worn', 'demo-1');
    const second = plugDemo('worn', 'demo-2');
    expect(first.ok && second.ok).toBe(true);
    if (!first.ok || !second.ok) return;
    expect(first.value.hand).not.toBeNull();
    expect(first.value.transport.identity.serial).not.toBe(second.value.transport.identity.serial);
    const refused = plugDemo('splendid', 'demo-3');
    expect(refused.ok ? null : refused.problem.code).toBe('demo-unknown');
  });
});
