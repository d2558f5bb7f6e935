/** Cells of one part on one kind of pad, counted together: many small cells tell what none of them does. */
import type { Part } from './demands.ts';
import { shareOf, type Result, type Share } from './result.ts';

const PARTS: readonly (readonly [Part, string])[] = [
  ['slip', 'every slip'],
  ['whole', 'every fault'],
  ['far', 'every fault'],
  ['near', 'every fault'],
];

/** Without what is not gated. */
export function togetherOf(results: readonly Result[]): Result[] {
  const pads = [...new Set(results.map(({ pad }) => pad))];
  return PARTS.flatMap(([part, name]) =>
    pads.flatMap((pad) => {
      const cells = results.filter((result) => result.part === part && result.pad === pad);
      const gated = cells.flatMap(({ shares }) => shares).filter(({ known }) => known === null);
      return cells.length < 2 ? [] : [{ part, name, pad, shares: sumsOf({ part, name, pad }, gated) }];
    }),
  );
}

/** By what was asked. */
function sumsOf(of: Pick<Result, 'part' | 'name' | 'pad'>, shares: readonly Share[]): Share[] {
  const demands = [...new Set(shares.map(({ demand }) => demand))];
  return demands.map((demand) => {
    const own = shares.filter((share) => share.demand === demand);
    const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);
    return shareOf(of, demand, {
      found: sum(own.map(({ found }) => found)),
      of: sum(own.map(({ of: drawn }) => drawn)),
    });
  });
}
