/** What several readings of the same bytes differ in, and what tells which is right. */
import { STICKS } from '../pad/stick.ts';
import type { FoundStick, PlaceReading } from './found-place.ts';

/**
 * One sentence; null for a single reading. The memory alone cannot tell: a pad's own sticks fit their own numbers to a few counts, and
 * a calibration that is kept away from one end of one axis changes one number of one stick.
 */
export function whatDecides(readings: readonly PlaceReading[]): string | null {
  const [first] = readings;
  if (first === undefined || readings.length < 2) return null;
  const differ = (of: (reading: PlaceReading) => string): boolean => new Set(readings.map(of)).size > 1;
  const questions = [
    ...(differ(orderOf) ? ['which stick is the left one'] : []),
    ...(differ(axesOf) ? ['which axis is x'] : []),
    ...(differ(spansOf) ? ['which span is above the centre'] : []),
    ...(differ(bytesOf) ? ['where a number begins'] : []),
  ];
  const [stick = 'left', other] = STICKS.filter((one) => first.sticks[one] !== undefined);
  const then = other === undefined ? '' : `, then the ${other} one`;
  return `${readings.length} readings fit these bytes about equally well and leave open ${listed(questions)}: search again with a survey of a pad of this kind that still has its own sticks, which the right reading fits to a few counts, or let a host calibrate the ${stick} stick alone${then}, pushed to every side but that of the greatest x, and compare the images: the bytes that change are that stick’s, and the number that falls most is its greatest x.`;
}

function sticksOf({ sticks }: PlaceReading): FoundStick[] {
  return Object.values(sticks).toSorted((a, b) => a.offset - b.offset);
}

/** In the order of the bytes. */
function orderOf(reading: PlaceReading): string {
  return sticksOf(reading)
    .map(({ stick }) => stick)
    .join();
}

function axesOf(reading: PlaceReading): string {
  return sticksOf(reading)
    .map(({ codec }) => codec.axes ?? 'xy')
    .join();
}

/** Which span stands first. */
function spansOf(reading: PlaceReading): string {
  return sticksOf(reading)
    .map(({ codec }) =>
      codec.form === 'words' ? codec.values : codec.order.filter((field) => field !== 'centre').join(' '),
    )
    .join();
}

/** Which bytes a number is made of. */
function bytesOf(reading: PlaceReading): string {
  return sticksOf(reading)
    .map(({ offset, codec }) => `${offset} ${codec.form === 'words' ? codec.endian : codec.order.indexOf('centre')}`)
    .join();
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join() : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}
