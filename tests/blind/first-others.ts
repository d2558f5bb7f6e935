/** Reported of the first edition, not gated: what its gate leaves out: other pads, other gates, two faults at once. */
import { createChance } from '../../core/simulate/chance.ts';
import type { UnitWish } from '../../core/simulate/draw-unit.ts';
import type { FaultName } from '../../core/simulate/faults.ts';
import type { FirstDraws } from './first-draws.ts';

const KINDS: readonly (readonly [string, UnitWish])[] = [
  ['8-bit sensor counts', { adcBits: 8 }],
  ['reports only on change', { onChange: true }],
  ['the reported domain, 8 bits', { family: 'plain' }],
  ['eight-sided gates', { gate: 'eightSided' }],
];

export async function reportOthers(
  draws: FirstDraws,
  visible: ReadonlyMap<FaultName, number>,
  seed: number,
  units: number,
): Promise<void> {
  for (const [name, wish] of KINDS) {
    const healthy = await draws.healthy(units, wish);
    const wrong = healthy.filter(({ named }) => named.length > 0).length;
    const shares: string[] = [];
    for (const [fault, size] of visible) {
      const answers = await draws.ofFault(fault, size, Math.ceil(units / 10), wish);
      shares.push(`${fault} ${draws.found(answers, fault)}/${answers.length}`);
    }
    console.log(`${name}: ${wrong} of ${units} healthy called faulty; found: ${shares.join(', ')}`);
  }
  await reportPairs(draws, visible, seed, units);
}

async function reportPairs(
  draws: FirstDraws,
  visible: ReadonlyMap<FaultName, number>,
  seed: number,
  units: number,
): Promise<void> {
  const chance = createChance(seed, 99);
  const pick = (): FaultName => [...visible.keys()][Math.floor(chance.next() * visible.size)] ?? 'stale-mapping';
  const pairs = Array.from({ length: units }, () => [pick(), pick()] as const).filter(([a, b]) => a !== b);
  const answers = await draws.judge(pairs.map((pair) => pair.map((one) => draws.sizes(one, visible.get(one) ?? 1)())));
  const both = answers.filter(
    ({ named }, index) => pairs[index]?.every((fault) => named.includes(fault)) === true,
  ).length;
  const one = answers.filter(({ named }, index) => pairs[index]?.some((fault) => named[0] === fault) === true).length;
  console.log(`two faults at once: both named in ${both} of ${pairs.length}, one of them first in ${one}`);
}
