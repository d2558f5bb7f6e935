/**
 * Writes to a pad through the bench in the data folder given, and kills its own process with the command of the number given,
 * before or after the pad takes it. The pad's memory stands in a file, as it would in the pad: run by a test, never imported.
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { done, type Result } from '../../core/result.ts';
import { createBench } from '../../electron/bench/bench.ts';
import { systemClock } from '../../electron/bench/time/clock.ts';
import { noLoopDelay } from '../../electron/bench/time/loop-delay.ts';
import { defaultSettings } from '../../electron/store/settings.ts';
import { createDemoPlug } from '../../electron/transport/plug-demo.ts';
import type { EventPayload } from '../../shared/contract.ts';
import { FaultPad, faultImage, faultMap, fromPad, keepFiles, wanted, watcherOf } from './fault-pad.ts';

const [folder, command, when] = process.argv.slice(2);
if (folder === undefined || command === undefined || when === undefined)
  throw new Error('give the folder, the number of the command, and before or after');
await keepFiles(folder);
const pad = new FaultPad({ clock: systemClock, image: faultImage() });
const bench = createBench({
  shell: 'local',
  version: '0.0.0-test',
  notices: [],
  folder,
  clock: systemClock,
  loopDelay: noLoopDelay,
  watcher: watcherOf(pad),
  plugDemo: createDemoPlug(systemClock, 1),
  takesPads: false,
  lock: { take: () => Promise.resolve(done(() => Promise.resolve())) },
  settings: { read: () => defaultSettings, write: () => done(defaultSettings) },
  measureWorker: new URL('../../electron/bench/measure/measure-worker.ts', import.meta.url),
});

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}

const ended = (): Promise<EventPayload<'memory.state'>> =>
  new Promise((resolve) => {
    const stop = bench.listen('memory.state', (state) => {
      if (state.end === null) return;
      stop();
      resolve(state);
    });
  });

const [listed] = valueOf(await bench.handle('pads.list', {}));
const handle = listed?.pad ?? '';
valueOf(await bench.handle('pads.open', { pad: handle }));
const reading = ended();
valueOf(await bench.handle('memory.read', { pad: handle }));
const { image } = await reading;
const wish = { store: { layer: 'user' as const, mappings: wanted, from: fromPad('fault-1') } };
const { plan } = valueOf(await bench.handle('images.plan', { image: image ?? '', map: faultMap.id, wish }));
valueOf(await bench.handle('memory.allow', { pad: handle, writing: true }));
const { token } = valueOf(await bench.handle('memory.preview', { pad: handle, wish: { plan } }));
pad.arm(null);
pad.onCommand = (at, now) => {
  writeFileSync(path.join(folder, 'pad-memory.bin'), pad.image);
  if (at === Number(command) && now === when) process.kill(process.pid, 'SIGKILL');
};
const writing = ended();
valueOf(await bench.handle('memory.write', { pad: handle, token }));
await writing;
await bench.close();
