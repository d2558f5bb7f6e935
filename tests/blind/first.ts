/**
 * The first edition of the blind test: the simulator's own random sticks, one fault each, at 1.5 to 4 times its just-visible size of
 * visible-sizes.json, and healthy ones. With --all the sizes are taken anew first, from the detection curve of each fault, and what the
 * gate leaves out is reported (first-others.ts). `keep` then writes confusion.md and visible-sizes.json.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { FaultName } from '../../core/simulate/faults.ts';
import { faultUnits } from '../../core/simulate/faults.ts';
import { confusionTable, type FaultRun } from './confusion-table.ts';
import { Crew } from './crew.ts';
import { isMissed, sayAsked, sayCount, type Demand } from './demand.ts';
import type { Count } from './exact-share.ts';
import { FirstDraws } from './first-draws.ts';
import { reportOthers } from './first-others.ts';
import type { BlindAnswer, BlindCase } from './judge-unit.ts';
import { justVisible } from './just-visible.ts';
import type { Miss } from './miss.ts';
import { curveUnits, type BlindOptions } from './options.ts';
import { blindFaults, curveSizes, padFaults, ungatedFaults, wantedSizes } from './sizes.ts';
import { takeCurve } from './take-curve.ts';

const FOUND: Demand = { what: 'found and named first or second', atLeast: 0.98 };
const NOT_KEPT: Demand = { what: 'not kept', atLeast: 0.95 };
const FALSE: Demand = { what: 'healthy called faulty', atMost: 0.02 };
/** Of every run beside the tests, and of `--all`. */
const CI_UNITS = { faulty: 40, healthy: 120 };
const ALL_UNITS = { faulty: 200, healthy: 500 };
const SIZES_FILE = path.join(import.meta.dirname, 'visible-sizes.json');

export async function runFirst(options: BlindOptions): Promise<Miss[]> {
  const { seed, all, only } = options;
  const own = all ? ALL_UNITS : CI_UNITS;
  const units = options.units ?? own.faulty;
  const faults = blindFaults.filter((fault) => only?.includes(fault) ?? (all || !ungatedFaults.has(fault)));
  const crew = new Crew<BlindCase, BlindAnswer>(new URL('./worker.ts', import.meta.url));
  const draws = new FirstDraws(crew, seed);
  const misses: Miss[] = [];
  const complain = (where: string, says: string): void => {
    const isUngated = ungatedFaults.has(where as FaultName);
    misses.push({
      where,
      says,
      known: isUngated ? 'Whether a drift is significant yet is a matter of how long one waits.' : null,
    });
  };
  const judge = (where: string, demand: Demand, count: Count): void => {
    console.log(`${where}: ${sayCount(demand, count)}`);
    if (isMissed(demand, count)) complain(where, `${sayCount(demand, count)}; ${sayAsked(demand)} was asked for.`);
  };

  const visible = all ? await sizesTaken(draws, faults, curveUnits(options, units)) : keptSizes(faults);
  for (const fault of faults) {
    const size = visible.get(fault);
    const wanted = wantedSizes[fault];
    const unit = faultUnits[fault];
    if (size === undefined) complain(fault, 'has no just-visible size.');
    else if (wanted !== undefined && size > wanted)
      complain(fault, `is just visible at ${size.toPrecision(3)} ${unit}; ${wanted} was asked for.`);
  }
  const runs: FaultRun[] = [];
  const together = { found: { found: 0, of: 0 }, notKept: { found: 0, of: 0 } };
  for (const [fault, size] of visible) {
    const answers = await draws.ofFault(fault, size, units);
    runs.push({ fault, answers });
    const found = { found: draws.found(answers, fault), of: answers.length };
    const notKept = { found: answers.filter(({ verdict }) => verdict !== 'keep').length, of: answers.length };
    judge(fault, FOUND, found);
    if (!padFaults.has(fault)) judge(fault, NOT_KEPT, notKept);
    if (ungatedFaults.has(fault)) continue;
    together.found = sumOf(together.found, found);
    if (!padFaults.has(fault)) together.notKept = sumOf(together.notKept, notKept);
  }
  judge('every fault', FOUND, together.found);
  judge('every fault', NOT_KEPT, together.notKept);
  if (only === null) {
    const healthy = await draws.healthy(options.units ?? own.healthy);
    runs.push({ fault: 'healthy', answers: healthy });
    judge('healthy', FALSE, { found: healthy.filter(({ named }) => named.length > 0).length, of: healthy.length });
    if (all) await reportOthers(draws, visible, seed, Math.round(units / 4));
  }
  await crew.close();
  const table = confusionTable(runs);
  console.log(table);
  if (options.keep && all && only === null) keep(visible, `seed ${seed}, ${units} sticks a fault`, table);
  return misses;
}

/** A fault without graded sizes is there whole. */
function keptSizes(faults: readonly FaultName[]): Map<FaultName, number> {
  const kept = JSON.parse(readFileSync(SIZES_FILE, 'utf8')) as Readonly<Partial<Record<FaultName, number>>>;
  return new Map(
    faults.flatMap((fault) => {
      const size = curveSizes[fault] === null ? 1 : kept[fault];
      return size === undefined ? [] : [[fault, size] as const];
    }),
  );
}

async function sizesTaken(
  draws: FirstDraws,
  faults: readonly FaultName[],
  units: number,
): Promise<Map<FaultName, number>> {
  const visible = new Map<FaultName, number>();
  for (const fault of faults) {
    const sizes = curveSizes[fault];
    const curve = await takeCurve(sizes ?? [], 0, (size) => draws.atSize(fault, size, units));
    const size = sizes === null ? 1 : justVisible(curve);
    const points = curve.map((point) => `${point.size}: ${Math.round((100 * point.found) / point.of)} %`).join('  ');
    console.log(
      sizes === null
        ? `${fault}: no graded size`
        : `${fault}: just visible at ${size?.toPrecision(3) ?? 'no size known'} ${faultUnits[fault]}    ${points}`,
    );
    if (size !== null) visible.set(fault, size);
  }
  return visible;
}

function sumOf(one: Count, other: Count): Count {
  return { found: one.found + other.found, of: one.of + other.of };
}

function keep(visible: ReadonlyMap<FaultName, number>, of: string, table: string): void {
  const sizes = [...visible].filter(([fault]) => curveSizes[fault] !== null && !ungatedFaults.has(fault));
  const rounded = sizes.map(([fault, size]) => [fault, Number(size.toPrecision(3))]);
  writeFileSync(SIZES_FILE, `${JSON.stringify(Object.fromEntries(rounded), null, 2)}\n`);
  const text = `# Confusion of the blind test, ${of}\n\n${table}\n`;
  writeFileSync(path.join(import.meta.dirname, 'confusion.md'), text);
}
