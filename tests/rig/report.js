/** Prints the guest's checks and writes their count: report.js RESULTS SUMMARY GUEST-EXIT-CODE. Exits 0 only if all passed. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const [, , results, summary, code] = process.argv;
const text = existsSync(results) ? readFileSync(results, 'utf8') : '';
const lines = text
  .split('\n')
  .filter((line) => line.trim().startsWith('{'))
  .map((line) => JSON.parse(line));
const checks = lines.filter((line) => typeof line.ok === 'boolean');
for (const { check, ok, ...facts } of checks)
  console.log(`${ok ? 'passed' : 'FAILED'}  ${check}  ${JSON.stringify(facts)}`);
for (const { figure, ...facts } of lines.filter((line) => line.figure))
  console.log(`figure  ${figure}  ${JSON.stringify(facts)}`);
const sum = {
  passed: checks.filter((check) => check.ok).length,
  failed: checks.filter((check) => !check.ok).length,
  skipped: 0,
};
// A guest that stopped before its last check must not look like one with few checks.
if (code !== '0' && sum.failed === 0) sum.failed = 1;
writeFileSync(summary, JSON.stringify(sum));
console.log(`rig: ${sum.passed} passed, ${sum.failed} failed`);
process.exit(sum.failed === 0 && sum.passed > 0 ? 0 : 1);
