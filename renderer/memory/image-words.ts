/** Memory images in the words of the screen. */
import type { ImageDetails, ImageSummary } from './memory-images.svelte.ts';
import type { Table } from '../kit/figures/table.ts';
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

/** When an image was kept, why, and of which pad; with the whole moment where no now is given. */
export function keptText({ at, why, pad }: ImageSummary['kept'][number], now: Date | null): string {
  return `${now === null ? at : whenText(at, now)}: ${why}${pad === null ? '' : `, ${padOfImage(pad).says}`}`;
}

/** The images of the vault, each with the whole moment of every time it was kept: "today" means nothing in a file. */
export function keptTable(images: readonly ImageSummary[]): Table {
  return {
    caption: 'Kept images',
    heads: ['SHA-256', { says: 'size', words: true }, { says: 'when and why', words: true, wraps: true }],
    rows: images.map(({ image, size, kept }) => [
      image,
      sizeText(size),
      kept.map((one) => keptText(one, null)).join('; '),
    ]),
    selected: null,
  };
}

/** One line that names an image in a list: when it was kept last, why, and its first digits. */
export function imageLine({ image, kept }: ImageSummary, now: Date): string {
  const [last] = kept;
  const pad = last?.pad == null ? '' : ` · ${padOfImage(last.pad).says}`;
  const what = last === undefined ? 'kept' : `${whenText(last.at, now)} · ${last.why}${pad}`;
  return `${what} · ${shortHash(image)}`;
}
