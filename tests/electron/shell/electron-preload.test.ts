import { readFileSync, readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, outFile, projectFile } from './built.ts';
import { runNode } from './run-node.ts';

describe('the built preload', () => {
  let played: Record<string, unknown>;

  beforeAll(async () => {
    await ensureBuilt();
    const ran = await runNode([projectFile('tests/electron/shell/play-preload.ts')]);
    expect(ran.stderr).toBe('');
    played = JSON.parse(ran.stdout) as Record<string, unknown>;
  }, 120_000);

  it('is one file that loads nothing but electron (E4)', () => {
    expect(readdirSync(outFile('preload')).filter((name) => name.endsWith('js'))).toEqual(['preload.cjs']);
    const loads = [...readFileSync(outFile('preload/preload.cjs'), 'utf8').matchAll(/require\(["'`](.+?)["'`]\)/gu)];
    expect(loads.map(([, name]) => name)).toEqual(['electron']);
  });

  it('gives the page four named functions and nothing else (S20)', () => {
    expect(played['worlds']).toEqual(['bench']);
    expect(played['names']).toEqual(['call', 'listen', 'save', 'openSamples']);
    expect(played['kinds']).toEqual(['function', 'function', 'function', 'function']);
  });

  it('passes on the calls of the contract and no other channel (S20)', () => {
    expect(played['known']).toEqual({ invoked: ['bench.call', 'pads.list', {}] });
    expect(played['unknown']).toMatchObject({ ok: false, problem: { code: 'call-unknown' } });
    expect(played['inherited']).toMatchObject({ ok: false, problem: { code: 'call-unknown' } });
    expect(played['saved']).toEqual({ invoked: ['bench.save', 'a.csv', 'bytes'] });
    expect(played['samples']).toEqual({ invoked: ['bench.samples'] });
  });

  it('tells payloads alone, never the event object, until the listening ends (S20)', () => {
    expect(played['heard']).toEqual([[[1]]]);
  });

  it('hands the sample port to its own window', () => {
    expect(played['messages']).toEqual([['bench.samples', '*', ['port']]]);
  });
});
