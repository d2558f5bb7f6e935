/** Memory images in the words of the screen. */
import type { ImageDetails, ImageSummary } from './memory-images.svelte.ts';
import { padName, type PadName } from '../pads/pad-name.ts';
import { whenText } from '../kit/words/when-text.ts';

/** What a layer's marker says. */
export const MARKER_WORDS = {
  valid: 'valid',
  empty: 'never written',
  other: 'not valid',
  none: 'has no marker',
} as const satisfies Record<ImageDetails['layers'][number]['marker'], string>;

/** The first digits of an image's SHA-256, which tell images apart by eye. */
export function shortHash(image: string): string {
  return image.slice(0, 12);
}

/** E.g. `64 KiB`, `4 KiB`, `65535 bytes`. */
export function sizeText(bytes: number): string {
  if (bytes >= 1024 && bytes % 1024 === 0) return `${bytes / 1024} KiB`;
  return bytes === 1 ? '1 byte' : `${bytes} bytes`;
}

/** The pad that an image was read from or made for. */
export function padOfImage({ product, ...pad }: NonNullable<ImageSummary['kept'][number]['pad']>): PadName {
  return padName({ product, pad });
}

/** One line that names an image in a list: when it was kept last, why, and its first digits. */
export function imageLine({ image, kept }: ImageSummary, now: Date): string {
  const [last] = kept;
  const pad = last?.pad == null ? '' : ` · ${padOfImage(last.pad).says}`;
  const what = last === undefined ? 'kept' : `${whenText(last.at, now)} · ${last.why}${pad}`;
  return `${what} · ${shortHash(image)}`;
}
