/**
 * How often the finder puts the true place first: 200 memory dumps of 512 KiB, seeds as given (`node tests/long/finder.ts 1`).
 * Exits with 1 where it is less than 98 %.
 */
import { missedPlaces } from '../support/make-dump.ts';

const DUMPS = 200;
const seed = Number(process.argv[2] ?? '1');
const from = performance.now();
const missed = missedPlaces(seed, DUMPS);
const seconds = (performance.now() - from) / 1000;
console.log(
  JSON.stringify({
    figure: 'finder, true place first',
    dumps: DUMPS,
    seed,
    first: DUMPS - missed.length,
    missed,
    seconds,
  }),
);
process.exitCode = missed.length <= DUMPS * 0.02 ? 0 : 1;
