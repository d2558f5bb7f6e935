/** From what the bench says of an open pad to its live readings, with the same pure functions as everywhere else. */
import { parseDescriptor } from '../../core/hid/descriptor.ts';
import { readHex } from '../../core/hid/hex.ts';
import { ByArrival } from '../../core/pad/by-arrival.ts';
import { createReadingDecoder } from '../../core/pad/decode-reading.ts';
import { findLayout } from '../../core/pad/find-layout.ts';
import { profileById } from '../../core/pad/profiles.ts';
import { createReadingSlot } from '../../core/pad/reading-slot.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { Descriptor } from '../../core/hid/control.ts';
import { LiveReadings, type PadReader } from './live-readings.ts';
import type { PadDetails } from './pad-words.ts';

/** Problems: those of the hex text and the descriptor; `profile-unknown` where the bench named one this window lacks. */
export function openLive(details: PadDetails): Result<LiveReadings> {
  const profile = details.profile === null ? null : profileById(details.profile);
  if (details.profile !== null && profile === null)
    return failed('profile-unknown', 'The bench uses a profile that this window does not know; reload the window.');
  const descriptor = readDescriptor(details.descriptor);
  if (!descriptor.ok) return descriptor;
  const readers = new ByArrival<PadReader>((arriving) => {
    const layout = findLayout(descriptor.value, profile, arriving);
    return { layout, decoder: createReadingDecoder(layout) };
  });
  return done(new LiveReadings(readers, createReadingSlot()));
}

function readDescriptor(hex: string | null): Result<Descriptor | null> {
  if (hex === null) return done(null);
  const bytes = readHex(hex);
  return bytes.ok ? parseDescriptor(bytes.value) : bytes;
}
