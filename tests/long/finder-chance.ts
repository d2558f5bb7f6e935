/**
 * Whether the finder's chance is true: 500 mixed dumps of 16 to 32 KiB without a calibration, of which at most one in a hundred may say
 * less than 0.01, and 100 each with one that the pad's own sticks, or fitted ones, are measured against. Run `npm run finder`, or with
 * another first seed `npm run finder -- 20001`. Exits with 1 where a chance is false or a record of a pad's own sticks is missed.
 */
import { findPlaces } from '../../core/image/rank-places.ts';
import { hideRecord, isOfRecord, rightReading } from '../support/hidden-record.ts';
import { makeMixedDump } from '../support/mixed-dump.ts';

const DUMPS = 500;
const RECORDS = 100;
const MOST_KIB = 32;
const SMALL = 0.01;
const firstSeed = Number(process.argv[2] ?? '1');
const seeds = (count: number): number[] => Array.from({ length: count }, (_, index) => firstSeed + index);

const chances = seeds(DUMPS).map((seed) => {
  const { image, measured } = makeMixedDump(seed, MOST_KIB);
  return { seed, chance: findPlaces(image, measured)[0]?.chance ?? 1 };
});
const small = chances.filter(({ chance }) => chance < SMALL);
console.log(
  JSON.stringify({ figure: 'dumps without a record, chance below 0.01', firstSeed, of: DUMPS, found: small }),
);

const missed = (['own', 'fitted'] as const).map((sticks) => {
  const found = seeds(RECORDS).map((seed) => {
    const record = hideRecord(seed, MOST_KIB, sticks);
    const place = findPlaces(record.image, record.measured).find((one) => isOfRecord(one, record));
    const isRight = place !== undefined && rightReading(place, record) !== undefined;
    return { isRight, chance: place?.chance ?? 1, readings: place?.readings.length ?? 0 };
  });
  const sum = {
    small: found.filter(({ chance }) => chance < SMALL).length,
    rightAmongReadings: found.filter(({ isRight }) => isRight).length,
    severalReadings: found.filter(({ readings }) => readings > 1).length,
    wrongAlone: found.filter(({ isRight, readings }) => readings === 1 && !isRight).length,
  };
  console.log(JSON.stringify({ figure: `records of ${sticks} sticks`, firstSeed, of: RECORDS, ...sum }));
  return sticks === 'own' ? RECORDS - sum.small : 0;
});
process.exitCode = small.length <= DUMPS * SMALL && missed.every((count) => count === 0) ? 0 : 1;
