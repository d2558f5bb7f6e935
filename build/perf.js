/** `npm run perf`: every figure as a table. Figures are measured, never judged here: ratios and medians of one run. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildIfStale, root } from './stale.js';

if (buildIfStale() !== 0) process.exit(1);
const benchmarks = [
  'decode',
  'numeric-against-scipy',
  'minimum-zone',
  'measure-log',
  'measure-growth',
  'nudge',
  'zone-map',
  'workbench-frames',
  'finder',
  'patch',
  'memory-session',
];
const rows = benchmarks.flatMap((name) =>
  run(process.execPath, ['--expose-gc', path.join(root, 'tests/perf', `${name}.ts`)], {}),
);
if (!process.argv.includes('--no-rig')) {
  for (const mode of ['virtual', 'real']) {
    const script = path.join(root, 'tests/rig/rig.sh');
    const streams = run('bash', [script, 'rig.only=streams', 'rig.rates=1000', 'rig.seconds=10'], { MODE: mode });
    rows.push(...streams.map((row) => ({ figure: `rig, ${mode} clock`, ...row })));
  }
}
console.log('\nThe rig is no evidence for real radios and hubs.\n');
for (const { figure, ...values } of rows) {
  console.log(figure);
  for (const [name, value] of Object.entries(values)) {
    console.log(`  ${name.padEnd(28)} ${typeof value === 'number' ? Number(value.toPrecision(4)) : String(value)}`);
  }
}

/** The JSON lines with a figure that a benchmark prints; one that fails ends the run. */
function run(command, args, env) {
  console.error(`measuring: ${[path.basename(command), ...args.map((arg) => path.basename(arg))].join(' ')}`);
  const ran = spawnSync(command, args, {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const lines = String(ran.stdout).split('\n');
  if (ran.status !== 0) {
    console.error(lines.slice(-20).join('\n'));
    process.exit(1);
  }
  return lines.flatMap((line) => {
    const json = /^(?:figure\s+\S+\s+)?(\{.*\})$/.exec(line)?.[1];
    return json === undefined ? [] : [JSON.parse(json)];
  });
}
