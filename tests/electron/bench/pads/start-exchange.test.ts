import { describe, expect, it } from 'vitest';
import type { Profile, StartStep } from '../../../../core/pad/profile.ts';
import type { Result } from '../../../../core/result.ts';
import { startPad, type ReportHearer } from '../../../../electron/bench/pads/start-exchange.ts';
import { FakeClock, settle } from '../../../support/fake-clock.ts';
import { ScriptedTransport } from '../scripted-transport.ts';

function step(hex: string, reply: StartStep['reply'] = null, only?: 'usb' | 'bluetooth'): StartStep {
  return { kind: 'output', reportId: 1, hex, reply, timeoutMillis: 500, only };
}

function profileOf(start: readonly StartStep[]): Profile {
  return {
    id: 'test',
    pads: [],
    report: { reportId: 0x30, byteLength: 12 },
    domain: 'reported',
    sticks: {},
    triggers: {},
    buttons: [],
    clicks: {},
    start,
  };
}

function run(transport: ScriptedTransport, start: readonly StartStep[], clock = new FakeClock()) {
  const hearers = new Set<ReportHearer>();
  const sent: string[] = [];
  const result: Promise<Result<void>> = startPad(profileOf(start), {
    transport,
    clock,
    overhear(hear) {
      hearers.add(hear);
      return () => void hearers.delete(hear);
    },
    sent: (reportId, payload) => sent.push(`${reportId} ${Buffer.from(payload).toString('hex')}`),
  });
  const report = (reportId: number, ...bytes: number[]): void => {
    for (const hear of hearers) hear(reportId, Uint8Array.from(bytes));
  };
  return { result, hearers, sent, report, clock };
}

describe('start exchange', () => {
  it('sends nothing where the profile needs no start', async () => {
    const transport = new ScriptedTransport();
    expect(await run(transport, []).result).toEqual({ ok: true, value: undefined });
    expect(transport.sent).toEqual([]);
  });

  it('sends step by step, counting where the profile says nn', async () => {
    const transport = new ScriptedTransport();
    const { result, sent } = run(transport, [step('nn 03'), { ...step('nn 04'), kind: 'feature' }]);
    expect((await result).ok).toBe(true);
    expect(transport.sent).toEqual(['output 1 0003', 'feature 1 0104']);
    expect(sent).toEqual(['1 0003', '1 0104']);
  });

  it('sends only what belongs to this connection', async () => {
    const transport = new ScriptedTransport();
    await run(transport, [step('aa', null, 'bluetooth'), step('bb', null, 'usb')]).result;
    expect(transport.sent).toEqual(['output 1 bb']);
  });

  it('waits for the reply, which may come before the sending is over, and takes no other for it', async () => {
    const transport = new ScriptedTransport();
    const reply = { reportId: 0x21, offset: 2, hex: '80 03' };
    const started = run(transport, [step('01', reply), step('02')]);
    transport.onSent = (hex) => {
      if (hex !== 'output 1 01') return;
      started.report(0x21, 0, 0, 0x80, 0x04);
      started.report(0x30, 0, 0, 0x80, 0x03);
      started.report(0x21, 0, 0, 0x80);
    };
    await settle();
    expect(transport.sent).toEqual(['output 1 01']);
    started.report(0x21, 9, 9, 0x80, 0x03, 7);
    expect((await started.result).ok).toBe(true);
    expect(transport.sent).toEqual(['output 1 01', 'output 1 02']);
    expect(started.hearers.size).toBe(0);
    expect(started.clock.waiting).toBe(0);
  });

  it('says which step was not answered in time', async () => {
    const transport = new ScriptedTransport();
    const started = run(transport, [step('01'), step('02', { reportId: 1, offset: 0, hex: '05' })]);
    await settle();
    started.clock.pass(499);
    await settle();
    started.clock.pass(2);
    const result = await started.result;
    expect(result).toMatchObject({ ok: false, problem: { code: 'pad-silent' } });
    expect(!result.ok && result.problem.says).toContain('step 2 of 2');
    expect(started.hearers.size).toBe(0);
  });
});
