import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import type { Problem } from '../../../core/result.ts';
import { openRecorder } from '../../../electron/store/recorder.ts';
import { SimulatedTransport } from '../../../electron/transport/simulated-transport.ts';
import { FakeClock } from '../../support/fake-clock.ts';
import { readLog } from '../../support/read-log.ts';
import { simulatedHeader } from '../../support/simulated-header.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

describe('a pad that vanishes while it is recorded', () => {
  it('leaves a log with every report that came before, and one problem', async () => {
    const file = path.join(await temporaryFolder(), 'vanished.padlog');
    const clock = new FakeClock();
    const pad = createSimulatedPad('healthy', 1);
    const transport = new SimulatedTransport('demo', pad, clock);
    const opened = await openRecorder(file, simulatedHeader(pad), { clock, startMicros: clock.micros() });
    if (!opened.ok) throw new Error(opened.problem.says);
    const recorder = opened.value;
    const problems: Problem[] = [];
    let reports = 0;
    await transport.open({
      report(at, id, payload) {
        reports += 1;
        recorder.report(at, id, payload);
      },
      gap: (at, lost) => recorder.gap(at, lost),
      lost: (problem) => problems.push(problem),
    });
    await clock.passSlowly(1234);
    transport.unplug();
    await clock.passSlowly(1000);
    expect(await recorder.close()).toEqual({ ok: true, value: undefined });
    expect(problems.map((problem) => problem.code)).toEqual(['pad-gone']);
    const log = await readLog(file);
    expect(log).toMatchObject({ cut: false });
    expect(log.entries).toHaveLength(1 + reports);
    expect(reports).toBeGreaterThan(1200);
  });
});
