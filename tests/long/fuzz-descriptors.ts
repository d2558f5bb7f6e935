/**
 * Parses damaged descriptors and decodes damaged reports under those that still parse: a problem or a value, never a
 * throw. Prints the seed, the outcomes and the slowest case. Run: `node tests/long/fuzz-descriptors.ts [COUNT] [SEED]`;
 * without a count a million, without a seed one from the clock.
 */
import { toHex } from '../../core/hid/hex.ts';
import { createRandom } from '../../core/numeric/random.ts';
import { checkDescriptor } from '../support/check-descriptor.ts';
import { goldenDescriptors } from '../support/golden-descriptors.ts';
import { hexBytes } from '../support/hid-bytes.ts';
import { mutateDescriptor } from '../support/mutate-descriptor.ts';

function main(count: number, seed: number): number {
  console.log(`${count} damaged descriptors and a report for each that parses, seed ${seed}`);
  const random = createRandom(seed);
  const seeds = goldenDescriptors.map((golden) => hexBytes(golden.descriptorHex));
  const outcomes = new Map<string, number>();
  let slowest = { millis: 0, hex: '' };
  for (let run = 0; run < count; run += 1) {
    const bytes = mutateDescriptor(seeds, random);
    const from = performance.now();
    try {
      const outcome = checkDescriptor(bytes, random);
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    } catch (thrown) {
      console.log(`run ${run} broke a promise: ${String(thrown)}\n${toHex(bytes)}`);
      return 1;
    }
    const millis = performance.now() - from;
    if (millis > slowest.millis) slowest = { millis, hex: toHex(bytes) };
    if ((run + 1) % 100_000 === 0) console.log(`${run + 1} done`);
  }
  for (const [outcome, times] of [...outcomes].sort((one, other) => other[1] - one[1]))
    console.log(`${String(times).padStart(9)}  ${outcome}`);
  console.log(
    `slowest: ${slowest.millis.toFixed(1)} ms, ${slowest.hex.length / 2} bytes: ${slowest.hex.slice(0, 400)}`,
  );
  return 0;
}

process.exitCode = main(Number(process.argv[2] ?? 1_000_000), Number(process.argv[3] ?? Date.now() % 2 ** 31));
