/** `self-check`: surveys a simulated pad whose truth is known and holds the measures against it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { judgeSelfCheck, type KnownStick, type SelfCheckItem } from '../../../core/measure/self-check.ts';
import { formatQuantity } from '../../../core/measure/format-quantity.ts';
import { row } from '../../../core/measure/table.ts';
import type { StickBuild } from '../../../core/simulate/build.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { extreme } from '../../../core/simulate/fault-changes.ts';
import { idealCount } from '../../../core/simulate/sensor.ts';
import { readLog } from './log-input.ts';
import { outputHead } from './output.ts';
import { surveyPad } from './survey.ts';
import { DEFAULT_STEPS } from './survey-steps.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface SelfCheckOptions {
  readonly seed: number;
}

const DEMO = 'healthy';

export async function checkSelf(terminal: Terminal, { seed }: SelfCheckOptions): Promise<ExitCode> {
  const folder = await mkdtemp(path.join(tmpdir(), 'stickwright-self-check-'));
  try {
    const log = path.join(folder, 'self-check.padlog');
    const quiet = { ...terminal, print: () => Promise.resolve(), say: () => undefined };
    const wish = { out: log, demo: DEMO, seed, releases: 24, turns: 3, flicks: 2, steps: DEFAULT_STEPS };
    const surveyed = await surveyPad(quiet, wish);
    if (surveyed !== EXIT.done) {
      terminal.say('stickwright: The survey of the simulated pad did not end well; look at the disk and try again.');
      return EXIT.failed;
    }
    const track = await readLog(terminal, log);
    if (!track.ok) return sayProblem(terminal, track.problem);
    const { build } = demos[DEMO];
    const known = { left: knownOf(build.sticks.left), right: knownOf(build.sticks.right) };
    const items = judgeSelfCheck(known, 1e6 / build.intervalMicros, measureTrack(track.value, null));
    await terminal.print(
      terminal.json ? JSON.stringify({ ...outputHead('self-check'), seed, items }) : drawSections([section(items)]),
    );
    return items.every(({ holds }) => holds) ? EXIT.done : EXIT.failed;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** From the numbers that the simulated stick is built of; nothing of it is measured. */
function knownOf(stick: StickBuild): KnownStick {
  const noise = (axis: 'x' | 'y'): number => Math.sqrt(stick[axis].noise ** 2 + 1 / 12);
  return {
    rest: { x: idealCount(stick.x, 0), y: idealCount(stick.y, 0) },
    gate: {
      right: extreme(stick, 'x', 1),
      up: extreme(stick, 'y', 1),
      left: extreme(stick, 'x', -1),
      down: extreme(stick, 'y', -1),
    },
    noise: { x: noise('x'), y: noise('y') },
  };
}

function section(items: readonly SelfCheckItem[]) {
  const good = items.filter(({ holds }) => holds).length;
  return {
    title: `self-check: ${String(good)} of ${String(items.length)} hold`,
    rows: items.map(({ of, known, measured, within, holds }) =>
      row(
        of,
        `${holds ? 'holds' : 'DOES NOT HOLD'}: ${formatQuantity(measured, null, 2)}`,
        `known ${formatQuantity(known, null, 2)} ± ${formatQuantity(within, null, 2)}`,
      ),
    ),
  };
}
