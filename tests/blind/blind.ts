/**
 * The blind test: `npm run blind`. Random sticks, sound or with a fault, judged by the program as any log would be, in two editions:
 * the simulator's own sticks (first.ts), and sticks, pads and hands written anew by someone who did not know how they are judged
 * (second/run.ts). A demand is missed where the exact 95 % interval of a share excludes it. Without options it draws what every run beside
 * the tests draws: of the first edition 40 a fault and 120 healthy, of the second the cells of second/units.ts. With --all it takes detection
 * curves and sizes anew and draws all of both.
 *
 * Options: --seed N (the gate is for seed 1; others report), --edition first|second, --units N (draws a cell), --curve N (draws a size of a
 * curve), --only NAME (several times: faults, and `sound`, `slip`, `pair` of the second edition), --pad KIND (several times, of the
 * second), --keep (with --all: writes confusion.md, visible-sizes.json and second/results.md), --write FOLDER (logs of
 * the second, for a look), --json FILE (its draws, a line each).
 */
import { runFirst } from './first.ts';
import { GATED_SEED, readOptions } from './options.ts';
import { runSecond } from './second/run.ts';

const RUNS = { first: runFirst, second: runSecond };

const options = readOptions();
let failing = 0;
for (const edition of options.editions) {
  const from = { wall: performance.now(), used: process.cpuUsage().user };
  const misses = await RUNS[edition](options);
  const wall = Math.round((performance.now() - from.wall) / 1000);
  const used = Math.round((process.cpuUsage().user - from.used) / 1e6);
  console.log(`${edition} edition, seed ${options.seed}: ${wall} s, ${used} s of a core`);
  for (const { where, says, known } of misses)
    console.log(known === null ? `! ${where}: ${says}` : `- ${where}: ${says} Not gated: ${known}`);
  failing += misses.filter(({ known }) => known === null).length;
}
process.exitCode = failing > 0 && options.seed === GATED_SEED ? 1 : 0;
