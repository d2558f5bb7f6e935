/** `image find IMAGE`: where an image may hold the calibration of a measured stick. */
import { findPlaces as findStored, type FoundPlace } from '../../../core/image/rank-places.ts';
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
      : drawSections([placesSection(places)]),
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

function placesSection(places: readonly FoundPlace[]): TableSection {
  const rows = places.slice(0, SHOWN).map((place) => {
    const where = STICKS.flatMap((stick) => {
      const hit = place.sticks[stick];
      return hit === undefined ? [] : [`${stick} at ${String(hit.offset)} (${sayCodec(hit.codec)})`];
    });
    const again = place.again.length === 0 ? '' : `again at ${place.again.join(', ')}`;
    return row(where.join(', '), `by chance ${place.expected.toPrecision(2)}`, again);
  });
  return { title: 'likely places, best first', rows: rows.length === 0 ? [row('places', 'none')] : rows };
}

function sayCodec(codec: NonNullable<FoundPlace['sticks']['left']>['codec']): string {
  if (codec.form === 'packed12') return `12-bit pairs: ${codec.order.join(', ')}`;
  const values = codec.values === 'minCentreMax' ? 'minimum, centre, maximum' : 'centre and spans';
  return codec.bits === 8
    ? `bytes: ${values}`
    : `${String(codec.bits)}-bit words, ${codec.endian} end first: ${values}`;
}
