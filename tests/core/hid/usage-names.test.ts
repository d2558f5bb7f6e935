import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Control } from '../../../core/hid/control.ts';
import { desktop, game, hasUsage, pages, simulation, usageKey } from '../../../core/hid/usage-names.ts';
import { inputs } from '../../support/hid-bytes.ts';

const tables = JSON.parse(readFileSync(path.join(import.meta.dirname, '../../golden/hut_usages.json'), 'utf8')) as {
  source: string;
} & Record<'pages' | 'genericDesktop' | 'simulation' | 'gaming', Record<string, string>>;

function published(table: Record<string, string>, number: number): string {
  const name = table[`0x${number.toString(16).toUpperCase().padStart(2, '0')}`] ?? '';
  return name.replaceAll(/[^a-z]/gi, '').toLowerCase();
}

describe(`usage numbers (${tables.source})`, () => {
  it.each(Object.entries(desktop))('on page 1: %s is %i', (name, usage) => {
    expect(published(tables.genericDesktop, usage)).toBe(name.toLowerCase());
  });

  it.each(Object.entries(simulation))('on page 2: %s is %i', (name, usage) => {
    expect(published(tables.simulation, usage)).toBe(name.toLowerCase());
  });

  it.each(Object.entries(game))('on page 5: %s is %i', (name, usage) => {
    expect(published(tables.gaming, usage)).toBe(name.toLowerCase());
  });

  it('name the pages', () => {
    expect(published(tables.pages, pages.genericDesktop)).toBe('genericdesktop');
    expect(published(tables.pages, pages.simulation)).toBe('simulationcontrols');
    expect(published(tables.pages, pages.game)).toBe('gamingcontrols');
    expect(published(tables.pages, pages.button)).toContain('button');
  });
});

it('a control has its own usage and those of its aliases', () => {
  const [control] = inputs('05 01 14 25 7f 75 08 95 01 a9 01 09 30 0b c4 00 02 00 a9 00 81 02');
  expect(hasUsage(control as Control, 1, 0x30)).toBe(true);
  expect(hasUsage(control as Control, 2, 0xc4)).toBe(true);
  expect(hasUsage(control as Control, 1, 0xc4)).toBe(false);
});

it('a usage key has four upper-case digits on each side', () => {
  expect(usageKey({ usagePage: 1, usage: 0x30 })).toBe('0001:0030');
  expect(usageKey({ usagePage: 0xffbc, usage: 0xbdad })).toBe('FFBC:BDAD');
});
