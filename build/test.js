/** `npm test`: every check and test but the rig. Writes out/results/summary.json and prints the sum as the last line. */
import './check-node.js';
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildIfStale, root } from './stale.js';
import { chromium, ensureSystemPackages } from './system-packages.js';

const results = path.join(root, 'out/results');
const bin = (name) => path.join(root, 'node_modules/.bin', name);
const sum = { passed: 0, failed: 0, skipped: 0 };

/** What each step took, for the line at the end. */
const times = [];

/** What failed, by name, to be said again at the very end: of a long output only the end may be kept. */
const failures = [];

/** Runs a command and gives its exit code; what it prints goes to the terminal, or, where two run at once, is kept together. */
function run(command, args, together) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: together ? ['ignore', 'pipe', 'pipe'] : 'inherit',
      shell: process.platform === 'win32',
      // Importing 'electron' in a test must never start a download.
      env: { ELECTRON_OVERRIDE_DIST_PATH: '/nonexistent', CHROMIUM: chromium(), ...process.env },
    });
    const said = [];
    child.stdout?.on('data', (piece) => said.push(piece));
    child.stderr?.on('data', (piece) => said.push(piece));
    child.on('error', (error) => said.push(Buffer.from(`${error.message}\n`)));
    child.on('close', (code) => {
      process.stdout.write(Buffer.concat(said));
      resolve(code);
    });
  });
}

/** Runs one step; its failure counts as one failed test and the run goes on, so that one run tells everything. */
async function step(name, command, args, together = false) {
  const from = Date.now();
  const good = (await run(command, args, together)) === 0;
  const seconds = Math.round((Date.now() - from) / 1000);
  times.push(`${name} ${seconds} s`);
  console.log(`== ${name}: ${good ? 'passed' : 'FAILED'}, ${seconds} s`);
  return good;
}

async function checkStep(name, command, args) {
  const good = await step(name, command, args, true);
  sum[good ? 'passed' : 'failed'] += 1;
  if (!good) failures.push(name);
}

/** A runner counts by its own machine-readable report; one that wrote none counts as failed. */
async function testStep(name, command, args, report, count) {
  const file = path.join(results, report);
  rmSync(file, { force: true });
  const good = await step(name, command, args);
  const counted = existsSync(file)
    ? count(JSON.parse(readFileSync(file, 'utf8')))
    : { passed: 0, failed: 0, skipped: 0, failures: [] };
  if (!good && counted.failed === 0) counted.failed = 1;
  failures.push(...(counted.failed > 0 && counted.failures.length === 0 ? [name] : counted.failures));
  for (const key of Object.keys(sum)) sum[key] += counted[key];
}

/** The tests of a browser suite, and of the suites within, that did not pass at once. */
function failedIn(suite) {
  const own = suite.specs.flatMap((spec) => {
    const bad = spec.tests.find(({ status }) => status === 'unexpected' || status === 'flaky');
    if (bad === undefined) return [];
    const said = bad.results.find(({ error }) => error !== undefined)?.error.message ?? '';
    return [`${suite.file}: ${spec.title} (${bad.status}): ${said.split('\n')[0]}`];
  });
  return [...own, ...(suite.suites ?? []).flatMap(failedIn)];
}

rmSync(path.join(results, 'summary.json'), { force: true });
mkdirSync(results, { recursive: true });
if (!ensureSystemPackages()) process.exit(1);
if (buildIfStale() !== 0) {
  console.error('The build failed: nothing else was tried.');
  process.exit(1);
}
// Lint takes as long as all other checks together: one core each, and what is left of it beside the unit tests.
const lint = checkStep('lint', 'npm', ['run', '-s', 'lint:code']);
await checkStep('types', 'npm', ['run', '-s', 'check']);
await checkStep('import rules, format, dead code', 'npm', ['run', '-s', 'lint:house']);
await testStep(
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
    failures: report.testResults.flatMap((file) =>
      file.status !== 'failed'
        ? []
        : [
            path.relative(root, file.name),
            ...file.assertionResults
              .filter(({ status }) => status === 'failed')
              .map((test) => `  ${test.fullName}: ${(test.failureMessages[0] ?? '').split('\n')[0]}`),
          ],
    ),
  }),
);
await lint;
await testStep(
  'browser tests',
  bin('playwright'),
  ['test', '-c', 'build/playwright.config.ts'],
  'browser.json',
  (report) => {
    const { expected, flaky, unexpected, skipped } = report.stats;
    if (flaky > 0) console.log(`== browser tests: ${flaky} passed at a second try alone, which counts as failed`);
    return { passed: expected, failed: unexpected + flaky, skipped, failures: report.suites.flatMap(failedIn) };
  },
);
writeFileSync(path.join(results, 'summary.json'), JSON.stringify({ ...sum, failures }));
for (const line of failures) console.log(`FAILED ${line}`);
console.log(`== ${times.join(', ')}`);
console.log(`${sum.passed} passed, ${sum.failed} failed, ${sum.skipped} skipped`);
process.exit(sum.failed === 0 ? 0 : 1);
