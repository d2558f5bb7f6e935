/** A found map becomes proven by a write that was read back and a survey that came after it. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, it } from 'vitest';
import { bundledMaps } from '../../../../core/image/bundled-maps.ts';
import { bundledProtocols } from '../../../../core/image/bundled-protocols.ts';
import type { Request } from '../../../../shared/contract.ts';
import { fromPad, wanted } from '../../../support/fault-pad.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf, type TestBench } from '../make-bench.ts';
import type { MemoryState } from '../fault-bench.ts';

const map = 'own-packed';
const from = fromPad('healthy-1');

/** The simulated pad under a map of the technician's own. */
async function benchOf(): Promise<TestBench & { pad: string }> {
  const folder = await temporaryFolder();
  const [packed] = bundledMaps;
  const [protocol] = bundledProtocols;
  const kinds = protocol?.identify.kinds.map((kind) => ({ ...kind, map }));
  const files = {
    maps: { ...packed, id: map, proof: 'unproven' },
    protocols: { ...protocol, id: 'own', identify: { ...protocol?.identify, kinds } },
  };
  for (const [keptSurveys, value] of Object.entries(files)) {
    await mkdir(path.join(folder, keptSurveys));
    await writeFile(path.join(folder, keptSurveys, 'own-packed.json'), JSON.stringify(value));
  }
  const made = await makeBench({ folder });
  return { ...made, pad: await openFirst(made) };
}

async function ended(made: TestBench): Promise<MemoryState> {
  let last: MemoryState | null = null;
  const stop = made.bench.listen('memory.state', (state) => (last = state));
  await made.until(() => last?.end != null);
  stop();
  return last as unknown as MemoryState;
}

async function write(made: TestBench & { pad: string }, wish: Request<'images.plan'>['wish']): Promise<MemoryState> {
  const { bench, pad } = made;
  valueOf(await bench.handle('memory.read', { pad }));
  const { image } = await ended(made);
  const { plan } = valueOf(await bench.handle('images.plan', { image: image ?? '', map, wish }));
  valueOf(await bench.handle('memory.allow', { pad, writing: true }));
  const { token } = valueOf(await bench.handle('memory.preview', { pad, wish: { plan } }));
  valueOf(await bench.handle('memory.write', { pad, token }));
  return ended(made);
}

async function survey(made: TestBench & { pad: string }, steps: Request<'survey.start'>['steps']): Promise<string> {
  const { bench, pad } = made;
  await follow(made, pad);
  const request = surveyOf(pad, { steps });
  const { survey: handle } = valueOf(await bench.handle('survey.start', request));
  await made.until(() => made.states.at(-1)?.survey === handle && made.states.at(-1)?.step === 'done');
  return handle;
}

it('asks for a write that was read back, then for a survey that measured something', { timeout: 120_000 }, async () => {
  const made = await benchOf();
  const { bench } = made;
  const prove = async (handle: string) => bench.handle('maps.prove', { map, survey: handle });
  const early = await survey(made, ['rest', 'rim']);
  expect(await prove(early)).toMatchObject({ ok: false, problem: { code: 'map-not-written' } });
  const unproven = await write(made, { store: { layer: 'user', mappings: wanted, from } });
  expect(unproven).toMatchObject({ end: 'after', problem: null });
  expect(await prove(early)).toMatchObject({ ok: false, problem: { code: 'map-not-written' } });
  const thin = await survey(made, ['rest']);
  expect(await prove(thin)).toMatchObject({ ok: false, problem: { code: 'survey-thin' } });
  const whole = await survey(made, ['rest', 'rim']);
  const told: string[] = [];
  bench.listen('maps.changed', ({ maps }) => told.push(maps.find((one) => one.map.id === map)?.map.proof ?? 'none'));
  expect(valueOf(await prove(whole)).map).toMatchObject({ id: map, proof: 'proven' });
  await made.until(() => told.length > 0);
  expect(told).toEqual(['proven']);
  expect(await bench.handle('maps.prove', { map: 'nobody', survey: whole })).toMatchObject({
    problem: { code: 'map-unknown' },
  });
});
