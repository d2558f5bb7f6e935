/** `image find IMAGE`: where an image may hold the calibration of a measured stick. */
import type { FoundPlace, PlaceReading } from '../../../core/image/found-place.ts';
import { findPlaces as findStored } from '../../../core/image/rank-places.ts';
import type { StickCodec } from '../../../core/image/stick-codec.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { row, type TableSection } from '../../../core/measure/table.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readInput } from './input-files.ts';
import { judgeLog } from '../../bench/measure/judge-log.ts';
import { measuredOf } from '../../bench/measure/log-answers.ts';
import { readLog, readMapping, readTerms } from './log-input.ts';
import { outputHead } from './output.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface FindOptions {
  readonly log?: string;
  readonly mapping?: string;
}

type Measured = Readonly<Partial<Record<StickId, StickMapping>>>;

/** Places shown to a person; --json has all. */
const SHOWN = 12;

export async function findInImage(terminal: Terminal, file: string, options: FindOptions): Promise<ExitCode> {
  const image = await readInput(file);
  if (!image.ok) return sayProblem(terminal, image.problem);
  if (image.value.length === 0)
    return sayProblem(terminal, failed('image-empty', 'The image is empty; read the memory again.').problem);
  const measured = await readMeasured(terminal, options);
  if (!measured.ok) return sayProblem(terminal, measured.problem);
  const places = findStored(image.value, measured.value);
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('image-find'), size: image.value.length, measured: measured.value, places })
      : drawSections(placesSections(places)),
  );
  return EXIT.done;
}

/** A mapping file holds typed values; a log is measured: the extents of the turns with the rest as centre. */
async function readMeasured(terminal: Terminal, options: FindOptions): Promise<Result<Measured>> {
  if (options.mapping !== undefined) {
    const mapping = await readMapping(options.mapping);
    return mapping.ok ? done(mapping.value ?? {}) : mapping;
  }
  if (options.log === undefined)
    return failed('find-nothing', 'Say what to look for: --log with a survey, or --mapping with values.');
  const terms = await readTerms(terminal, {});
  if (!terms.ok) return terms;
  const track = await readLog(terminal, options.log);
  if (!track.ok) return track;
  return measuredOf(judgeLog(track.value, terms.value).sticks);
}

/** The readings of a place stand under each other, what decides between them behind all. */
function placesSections(places: readonly FoundPlace[]): TableSection[] {
  const shown = places.slice(0, SHOWN);
  const rows = shown.flatMap(({ readings, again, chance }) =>
    readings.map((reading, index) =>
      index === 0
        ? row(sayReading(reading), sayChance(chance), again.length === 0 ? '' : `again at ${again.join(', ')}`)
        : row(`or ${sayReading(reading)}`, ''),
    ),
  );
  const open = shown.flatMap(({ readings: [first], decides }) =>
    first === undefined || decides === null ? [] : [row(sayReading(first), decides)],
  );
  return [
    { title: 'likely places, best first', rows: rows.length === 0 ? [row('places', 'none')] : rows },
    ...(open.length === 0 ? [] : [{ title: 'what decides between the readings of a place', rows: open }]),
  ];
}

function sayReading({ sticks }: PlaceReading): string {
  return STICKS.flatMap((stick) => {
    const found = sticks[stick];
    return found === undefined ? [] : [`${stick} at ${String(found.offset)} (${sayCodec(found.codec)})`];
  }).join(', ');
}

function sayChance(chance: number): string {
  return chance >= 0.5 ? 'as often by chance' : `by chance 1 in ${String(Math.floor(1 / chance))}`;
}

const VALUE_WORDS = {
  minCentreMax: 'minimum, centre, maximum',
  centreAndSpans: 'centre, below, above',
  centreAboveBelow: 'centre, above, below',
} as const;

function sayCodec(codec: StickCodec): string {
  const axes = codec.axes === 'yx' ? '; y first' : '';
  if (codec.form === 'packed12') return `12-bit pairs: ${codec.order.join(', ')}${axes}`;
  const values = `${VALUE_WORDS[codec.values]}${axes}`;
  return codec.bits === 8
    ? `bytes: ${values}`
    : `${String(codec.bits)}-bit words, ${codec.endian} end first: ${values}`;
}
