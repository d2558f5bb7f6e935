import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');
const FOLDERS = ['core', 'shared', 'electron', 'renderer', 'tests', 'build'];

function filesOf(folder: string, endings: readonly string[]): string[] {
  return readdirSync(path.join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)));
}

const sources = FOLDERS.flatMap((folder) => filesOf(folder, ['.ts', '.svelte', '.js', '.cjs', '.css']));
const product = sources.filter((file) => !file.startsWith('tests/'));

function linesOf(file: string): number {
  return readFileSync(path.join(root, file), 'utf8').split('\n').length;
}

describe('the house', () => {
  it('has no file of the product above 300 lines, and no test above 400', () => {
    expect(sources.length).toBeGreaterThan(100);
    expect(product.filter((file) => linesOf(file) > 300)).toEqual([]);
    expect(sources.filter((file) => linesOf(file) > 400)).toEqual([]);
  });

  it('keeps its files small: the median of the product is at most 80 lines', () => {
    const lengths = product.map(linesOf).toSorted((a, b) => a - b);
    expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThanOrEqual(80);
  });

  it('has no drawer for everything', () => {
    expect(sources.filter((file) => /(^|\/)(utils?|helpers?|misc|common|managers?)(\.|\/)/.test(file))).toEqual([]);
  });

  it('exports by name only', () => {
    const code = product.filter((file) => file.endsWith('.ts') && !file.startsWith('build/'));
    expect(code.filter((file) => /^export default/m.test(readFileSync(path.join(root, file), 'utf8')))).toEqual([]);
  });

  it('has no top-level folder that the design does not name', () => {
    const folders = readdirSync(root, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
      .filter((name) => !['.git', 'node_modules', 'out', 'coverage'].includes(name));
    expect(folders.filter((name) => ![...FOLDERS, '.ci'].includes(name))).toEqual([]);
  });

  it('names no registry host, lock file included', () => {
    const lock = readFileSync(path.join(root, 'package-lock.json'), 'utf8');
    expect(lock).not.toMatch(/"resolved"/);
    expect(lock).not.toMatch(/https?:\/\/registry/);
  });
});
