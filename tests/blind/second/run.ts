/**
 * The second edition of the blind test: sticks, hands and wires written without knowledge of how they are judged (demands.ts says what
 * is asked). With --all the detection curves of all faults are taken first, and the draws are of the sizes that they give; else of the sizes
 * that the bench asks for (sizes.ts), and fewer (units.ts). Misses that are known (not-gated.ts) are only reported.
 */
import { appendFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Crew } from '../crew.ts';
import type { Miss } from '../miss.ts';
import { curveUnits, type BlindOptions } from '../options.ts';
import type { Cell } from './cells.ts';
import { curveMisses, sizesOf, takeCurves } from './curves.ts';
import type { Wish } from './draw-unit.ts';
import type { Draw, Judged } from './judge-draw.ts';
import { Ledger } from './ledger.ts';
import { notGated, sayNotGated } from './not-gated.ts';
import { padKinds, type PadKind } from './pad-plan.ts';
import { faultsOnPads, groupsOf, type Plan } from './plan.ts';
import { faultPools, soundPools, type Drawn } from './pools.ts';
import { resultsPage } from './results-table.ts';
import { sayJudged, sayResult } from './say-cell.ts';
import { unitsOf } from './units.ts';
import { sizeIn } from './visible-sizes.ts';

const PADS: readonly PadKind[] = ['sensor12', 'reported8', 'reported16'];

type Judge = (wishes: readonly Wish[]) => Promise<Judged[]>;

export async function runSecond(options: BlindOptions): Promise<Miss[]> {
  const { seed, all, only, write, json } = options;
  const plan: Plan = {
    seed,
    pads: padsOf(options.pads),
    units: (part) => unitsOf(options, part),
    isAsked: (name) => only?.some((one) => name.startsWith(one)) ?? true,
  };
  const crew = new Crew<Draw, Judged>(new URL('./worker.ts', import.meta.url));
  const judge: Judge = (wishes) => crew.answer(wishes.map((wish) => ({ wish, folder: write })));
  if (json !== null) writeFileSync(json, '');

  const curves = all ? await takeCurves(faultsOnPads(plan), curveUnits(options, plan.units('far')), seed, judge) : [];
  const taken = sizesOf(curves);
  const ledger = new Ledger();
  for (const cells of groupsOf(plan, (pad, name) => sizeIn(taken, pad, name))) {
    const group = await judgeGroup(cells, judge);
    if (json !== null) appendFileSync(json, linesOf(group.flatMap(([, judged]) => judged)));
    for (const [at, result] of ledger.add(group).entries()) {
      console.log(sayResult(result));
      if (all || only !== null) console.log(sayJudged(group[at]?.[1] ?? []));
    }
    const pools = all ? [...soundPools(group), ...faultPools(group)] : soundPools(group);
    for (const result of ledger.addPools(pools)) console.log(sayResult(result));
  }
  await crew.close();
  for (const result of ledger.addTogether()) console.log(sayResult(result));

  const losses = ledger.losses.lines();
  const reasons = [...ledger.reasons.sound.lines(), ...ledger.reasons.slip.lines()];
  for (const line of [...reasons, ...losses, ...notGated.map(sayNotGated)]) console.log(line);
  if (options.keep && all && only === null && options.pads === null)
    writeFileSync(
      path.join(import.meta.dirname, 'results.md'),
      resultsPage({
        title: `Second blind test, seed ${seed}, ${plan.units('far')} draws a cell`,
        curves,
        results: ledger.results,
        losses,
        confusion: ledger.confusion,
      }),
    );
  return [...curves.flatMap(curveMisses), ...ledger.misses];
}

function padsOf(asked: readonly string[] | null): readonly PadKind[] {
  const unknown = asked?.filter((name) => !padKinds.some((kind) => kind === name)) ?? [];
  if (unknown.length > 0) throw new Error(`There is no pad ${unknown.join(', ')}; there are ${padKinds.join(', ')}.`);
  return asked === null ? PADS : padKinds.filter((kind) => asked.includes(kind));
}

/** All at once, so that no worker waits at the end of each cell. */
async function judgeGroup(cells: readonly Cell[], judge: Judge): Promise<Drawn[]> {
  const judged = await judge(cells.flatMap(({ wishes }) => wishes));
  const starts = cells.map((_, at) => cells.slice(0, at).reduce((sum, { wishes }) => sum + wishes.length, 0));
  return cells.map((cell, at) => {
    const start = starts[at] ?? 0;
    return [cell, judged.slice(start, start + cell.wishes.length)];
  });
}

function linesOf(judged: readonly Judged[]): string {
  return judged.map((one) => `${JSON.stringify(one)}\n`).join('');
}
