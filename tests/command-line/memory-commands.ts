/** What tests of the `memory` commands share: a data folder of their own, a plan, a confirmation. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect } from 'vitest';
import { demoPads } from '../../core/pad/demo-profile.ts';
import type { PadMapping } from '../../core/mapping/mapping.ts';
import type { Ran } from '../electron/shell/run-node.ts';
import { stickwright } from './run-command.ts';

/** Every byte of every number of the simulated pads' own mapping is another here. */
export const wished: PadMapping = {
  left: { x: { min: 300, centre: 1500, max: 3000 }, y: { min: 600, centre: 1700, max: 3500 } },
  right: { x: { min: 400, centre: 1600, max: 3100 }, y: { min: 500, centre: 1400, max: 3600 } },
};

export interface Shown {
  readonly kind: string;
  readonly confirm: string;
  readonly changes: readonly { readonly offset: number; readonly new: string; readonly means: string }[];
  readonly blocks: readonly { readonly offset: number; readonly bytes: number }[];
  readonly cautions: readonly string[];
  readonly asks: readonly string[];
}

/** The plans of these tests change the fall-back layer. */
export const ACCEPTED = ['--accept', 'factory'] as const;

/** Reads the pad into pad.bin and plans a mapping into patch.json, both in the folder. */
export async function readAndPlan(folder: string, demo: string, mapping: PadMapping = wished): Promise<void> {
  const [image, patch, file] = ['pad.bin', 'patch.json', 'mapping.json'].map((name) => path.join(folder, name)) as [
    string,
    string,
    string,
  ];
  expect(await stickwright(['memory', 'read', '--demo', demo, '--out', image, '--force'])).toMatchObject({ code: 0 });
  const pad = { ...demoPads.sensor, serial: `${demo}-kept` };
  const whole = { kind: 'stickwright-mapping', version: 1, pad, domain: 'sensor', sticks: mapping };
  await writeFile(file, JSON.stringify(whole));
  const plan = ['image', 'plan', image, '--layer', 'factory', '--mapping', file, '--out', patch, '--force'];
  const planned = await stickwright(plan);
  expect(planned).toMatchObject({ code: 0 });
  expect(planned.stderr).toMatch(/^This changes the factory layer[^\n]+\(factory\)\n$/u);
}

/** Runs a command that shows what it would write. */
export async function show(args: readonly string[]): Promise<Shown> {
  const ran = await stickwright([...args, '--json']);
  expect(ran, ran.stderr).toMatchObject({ code: 0 });
  const shown = JSON.parse(ran.stdout) as Shown;
  expect(shown.kind).toBe('stickwright-memory-plan');
  return shown;
}

/** The last line on standard error, below the progress. */
export function lastWords({ stderr }: Ran): string {
  return stderr.trimEnd().split('\n').at(-1) ?? '';
}

/** What went wrong and how to go on, as a sentence. */
export const SENTENCE = /^stickwright: [^\n]+\.$/u;
