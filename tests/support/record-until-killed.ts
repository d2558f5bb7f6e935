/** Records a simulated pad into the file given until the process is killed: run by a test, never imported. */
import { createSimulatedPad } from '../../core/simulate/simulated-pad.ts';
import { systemClock } from '../../electron/bench/time/clock.ts';
import { openRecorder } from '../../electron/store/recorder.ts';
import { SimulatedTransport } from '../../electron/transport/simulated-transport.ts';
import { simulatedHeader } from './simulated-header.ts';

const file = process.argv[2];
if (file === undefined) throw new Error('give the log to write');
const pad = createSimulatedPad('healthy', 1);
const opened = await openRecorder(file, simulatedHeader(pad), {
  clock: systemClock,
  startMicros: systemClock.micros(),
});
if (!opened.ok) throw new Error(opened.problem.says);
const recorder = opened.value;
await new SimulatedTransport('demo', pad, systemClock).open({
  report: (at, id, payload) => recorder.report(at, id, payload),
  gap: (at, lost) => recorder.gap(at, lost),
  lost: () => undefined,
});
