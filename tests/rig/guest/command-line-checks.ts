/** The product's command line on a real node: pads, descriptor, decode, watch, and an unplug while it watches. */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { BENCH_DESCRIPTOR, benchValues } from './bench-pad.ts';
import { check, sleep } from './checks.ts';
import { PAD, type RigPad } from './rig-pad.ts';

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

/** Under emulation a program needs its time to start. */
const START_MILLIS = 6000;

function run(args: readonly string[], uid?: number): { readonly ended: Promise<Ran> } {
  const child = spawn(process.execPath, [path.join(import.meta.dirname, 'command-line.js'), ...args], {
    env: { PATH: '/bin', HOME: '/tmp', STICKWRIGHT_HOME: '/tmp/stickwright' },
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
  let out = '';
  let error = '';
  child.stdout.on('data', (chunk) => (out += String(chunk)));
  child.stderr.on('data', (chunk) => (error += String(chunk)));
  return { ended: new Promise((resolve) => child.once('close', (code) => resolve({ code, out, error }))) };
}

export async function checkCommandLine(pad: RigPad): Promise<void> {
  const node = (await pad.plug(BENCH_DESCRIPTOR)) ?? '';
  const pads = await run(['pads', '--json']).ended;
  const listed = parse(pads.out) as { pads?: { path: string; product: string; vendorId: number; problem: unknown }[] };
  check(
    '`pads` lists the pad on its node',
    pads.code === 0 &&
      listed.pads?.length === 1 &&
      listed.pads[0]?.path === node &&
      listed.pads[0].vendorId === PAD.vendorId,
    { code: pads.code, listed, error: pads.error },
  );
  const refused = await run(['pads'], 1000).ended;
  check(
    '`pads` of an account without rights prints the rule',
    refused.code === 0 && refused.out.includes('70-stickwright-1209-5711.rules'),
    {
      code: refused.code,
      error: refused.error,
    },
  );
  const sysfs = `/sys/class/hidraw/${path.basename(node)}/device/report_descriptor`;
  const described = await run(['descriptor', sysfs, '--json']).ended;
  const controls = (parse(described.out) as { controls?: unknown[] }).controls ?? [];
  check('`descriptor` reads the one in sysfs', described.code === 0 && controls.length > 20, {
    code: described.code,
    controls: controls.length,
    error: described.error,
  });
  await checkWatch(pad, node);
  await checkUnplugged(pad, node);
}

/** Ten reports, one after the other, each with values of its own: every one must be printed. */
async function checkWatch(pad: RigPad, node: string): Promise<void> {
  const watching = run(['watch', '--pad', node, '--seconds', '12']);
  await sleep(START_MILLIS);
  await pad.order({ op: 'stream', hz: 50, count: 10 });
  await pad.event('streamed');
  const watched = await watching.ended;
  const lines = watched.out
    .trim()
    .split('\n')
    .map((line) => parse(line) as { sticks?: { left?: { x: number; y: number } } });
  const seen = lines.filter((line, index) => line.sticks?.left?.x === benchValues(index).axes[0]).length;
  check('`watch` prints every report with its values', watched.code === 0 && seen === 10, {
    code: watched.code,
    lines: lines.length,
    seen,
    error: watched.error,
  });
}

async function checkUnplugged(pad: RigPad, node: string): Promise<void> {
  const watching = run(['watch', '--pad', node, '--seconds', '30']);
  await sleep(START_MILLIS);
  await pad.order({ op: 'stream', hz: 50, count: 5 });
  await pad.event('streamed');
  await pad.unplug();
  const watched = await watching.ended;
  check(
    '`watch` ends with 1 and one sentence when the pad goes',
    watched.code === 1 && /no longer there/.test(watched.error) && !watched.error.includes('    at '),
    {
      code: watched.code,
      error: watched.error,
    },
  );
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return {}; // Told apart by what the check then misses.
  }
}
