/** Runs in the guest: every check of the rig, in order; exit code 0 only if all passed. */
import { readFileSync } from 'node:fs';
import { check, failed } from './checks.ts';
import { checkCommandLine } from './command-line-checks.ts';
import { judgeReports } from './input-judge.ts';
import { judgeDescriptors } from './kernel-judge.ts';
import { checkMemory } from './memory-checks.ts';
import { RigPad } from './rig-pad.ts';
import { checkStreams } from './stream-checks.ts';
import { checkExchange, checkLayout, checkListing, checkPermission, checkUnplug } from './transport-checks.ts';

/** `rig.name=value` words of the kernel's command line. */
const wishes = new Map(
  readFileSync('/proc/cmdline', 'utf8')
    .trim()
    .split(' ')
    .filter((word) => word.startsWith('rig.'))
    .map((word): [string, string] => [word.slice(4).split('=')[0] ?? '', word.split('=')[1] ?? '']),
);

const pad = new RigPad();
try {
  await pad.event('ready', 10);
  const rates = (wishes.get('rates') ?? '125,250,1000').split(',').map(Number);
  const seconds = Number(wishes.get('seconds') ?? 3);
  if (wishes.get('only') === 'streams') await checkStreams(pad, rates, seconds);
  else if (wishes.get('only') === 'memory') await checkMemory(pad);
  else {
    await checkListing(pad);
    await checkLayout(pad);
    await checkExchange(pad);
    await checkPermission(pad);
    await checkUnplug(pad);
    await checkMemory(pad);
    await checkCommandLine(pad);
    await checkStreams(pad, rates, seconds);
    await checkStreams(pad, [1000], 2, 500);
    await judgeDescriptors(pad);
    await judgeReports(pad, Number(wishes.get('samples') ?? 60));
  }
} catch (error) {
  check('the rig runs to its end', false, { error: error instanceof Error ? error.stack : String(error) });
}
pad.kill();
process.exit(failed() === 0 ? 0 : 1);
