/**
 * `npm run mutate FOLDER [FILE …]`: changes core/FOLDER (or FILE.ts in it alone) in small ways, one at a time, and runs the tests
 * in tests/core/FOLDER against each. Prints what no test noticed and the share that was noticed. What a change leaves the same
 * for every input stands in tests/mutation/equal.json with the reason and does not count. Tables that are made once as a file is
 * loaded are left out, as each change of one takes all tests: `-- --tables` tries them, too. With `-- --own` only the tests that
 * are named like the files run: much sooner, and stricter.
 */
import './check-node.js';
import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { root } from './stale.js';
import config from './stryker.config.js';

/** Tests that count through everything: right, but far too long to run once for every change. */
const TOO_LONG = ['proposal/even-and-full-reach.test.ts'];
const UNNOTICED = ['Survived', 'NoCoverage'];

const asked = process.argv.slice(2);
const [folder = '', ...given] = asked.filter((word) => !word.startsWith('--'));
const names = given.map((name) => name.replace(/\.ts$/, ''));
const files = names.length > 0 ? names.map((name) => `core/${folder}/${name}.ts`) : [`core/${folder}/**/*.ts`];
const own = asked.includes('--own') && names.length > 0 ? names.map((name) => `${name}.test.ts`) : null;
const testFolder = path.join(root, 'tests/core', folder);
if (folder === '' || !existsSync(path.join(root, 'core', folder)) || !existsSync(testFolder)) {
  console.error('Say which folder of core: npm run mutate proposal, or npm run mutate proposal guard for one file.');
  process.exit(2);
}
const missing = names.length > 0 ? files.filter((file) => !existsSync(path.join(root, file))) : [];
if (missing.length > 0) {
  console.error(`There is no ${missing.join(', ')}.`);
  process.exit(2);
}

process.chdir(root);
mkdirSync('out/mutation', { recursive: true });
const results = await new Stryker({
  ...config,
  mutate: files,
  ignoreStatic: !asked.includes('--tables'),
  testFiles: readdirSync(testFolder, { recursive: true })
    .filter((name) => name.endsWith('.test.ts') && !TOO_LONG.includes(`${folder}/${name}`))
    .filter((name) => own === null || own.includes(name))
    .map((name) => `tests/core/${folder}/${name}`),
  incrementalFile: `out/mutation/${folder}${own === null ? '' : '-own'}.json`,
}).runMutationTest();
report(results.map(describe));

function describe({ fileName, location, replacement, status }) {
  const file = path.relative(root, path.resolve(root, fileName)).replaceAll('\\', '/');
  const lines = readFileSync(path.join(root, file), 'utf8').split('\n');
  const { start, end } = location;
  const taken = lines.slice(start.line - 1, end.line);
  taken[taken.length - 1] = taken.at(-1).slice(0, end.column - 1);
  taken[0] = taken[0].slice(start.column - 1);
  return {
    file,
    number: start.line,
    line: lines[start.line - 1].trim(),
    from: oneLine(taken.join(' ')),
    to: oneLine(replacement ?? ''),
    status,
  };
}

function oneLine(text) {
  return text.replaceAll(/\s+/g, ' ').trim();
}

function report(mutants) {
  const equal = JSON.parse(readFileSync(path.join(root, 'tests/mutation/equal.json'), 'utf8'));
  const isEqual = (mutant) =>
    equal.some((one) => ['file', 'line', 'from', 'to'].every((key) => one[key] === mutant[key]));
  const judged = mutants.filter(({ status }) => ['Killed', 'Timeout', ...UNNOTICED].includes(status));
  const counted = judged.filter((mutant) => !isEqual(mutant));
  const unnoticed = counted.filter(({ status }) => UNNOTICED.includes(status));
  for (const { file, number, from, to, status } of unnoticed)
    console.log(`${file}:${number}: ${from} → ${to}${status === 'NoCoverage' ? ' (no test gets there)' : ''}`);
  for (const [file, own] of Object.entries(Object.groupBy(counted, (mutant) => mutant.file)))
    console.log(`${file}: ${noticed(own)}`);
  const noticedEqual = judged.filter((mutant) => isEqual(mutant) && !UNNOTICED.includes(mutant.status));
  for (const { file, number, from, to } of noticedEqual)
    console.log(`${file}:${number}: ${from} → ${to} stands in equal.json, but a test notices it`);
  console.log(`core/${folder}: ${noticed(counted)}; ${judged.length - counted.length} listed as equal`);
}

function noticed(mutants) {
  const count = mutants.filter(({ status }) => !UNNOTICED.includes(status)).length;
  return `${count} of ${mutants.length} noticed (${mutants.length === 0 ? 100 : Math.round((100 * count) / mutants.length)} %)`;
}
