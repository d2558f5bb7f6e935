/** `npm test`: every check and test but the rig. Writes out/results/summary.json and prints the sum as the last line. */
import './check-node.js';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildIfStale, root } from './stale.js';
import { chromium, ensureSystemPackages } from './system-packages.js';

const results = path.join(root, 'out/results');
const bin = (name) => path.join(root, 'node_modules/.bin', name);
const sum = { passed: 0, failed: 0, skipped: 0 };

/** Runs one step; its failure counts as one failed test and the run goes on, so that one run tells everything. */
function step(name, command, args) {
  const from = Date.now();
  const run = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    // Importing 'electron' in a test must never start a download.
    env: { ELECTRON_OVERRIDE_DIST_PATH: '/nonexistent', CHROMIUM: chromium(), ...process.env },
  });
  const good = run.status === 0;
  console.log(`== ${name}: ${good ? 'passed' : 'FAILED'}, ${Math.round((Date.now() - from) / 1000)} s`);
  return good;
}

function checkStep(name, command, args) {
  sum[step(name, command, args) ? 'passed' : 'failed'] += 1;
}

/** A runner counts by its own machine-readable report; one that wrote none counts as failed. */
function testStep(name, command, args, report, count) {
  const file = path.join(results, report);
  const good = step(name, command, args);
  const counted = existsSync(file)
    ? count(JSON.parse(readFileSync(file, 'utf8')))
    : { passed: 0, failed: 0, skipped: 0 };
  if (!good && counted.failed === 0) counted.failed = 1;
  for (const key of Object.keys(sum)) sum[key] += counted[key];
}

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });
if (!ensureSystemPackages()) process.exit(1);
if (buildIfStale() !== 0) {
  console.error('The build failed: nothing else was tried.');
  process.exit(1);
}
checkStep('types', 'npm', ['run', '-s', 'check']);
checkStep('lint, import rules, format, dead code', 'npm', ['run', '-s', 'lint']);
testStep(
  'unit tests',
  bin('vitest'),
  [
    'run',
    '-c',
    'build/vite.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${results}/unit.json`,
  ],
  'unit.json',
  (report) => ({
    passed: report.numPassedTests,
    failed: report.numFailedTests + (report.numFailedTestSuites > 0 && report.numFailedTests === 0 ? 1 : 0),
    skipped: report.numPendingTests + (report.numTodoTests ?? 0),
  }),
);
testStep(
  'browser tests',
  bin('playwright'),
  ['test', '-c', 'build/playwright.config.ts'],
  'browser.json',
  (report) => ({
    passed: report.stats.expected + report.stats.flaky,
    failed: report.stats.unexpected,
    skipped: report.stats.skipped,
  }),
);
writeFileSync(path.join(results, 'summary.json'), JSON.stringify(sum));
console.log(`${sum.passed} passed, ${sum.failed} failed, ${sum.skipped} skipped`);
process.exit(sum.failed === 0 ? 0 : 1);
