/** A kept image brought back to the pad in hand: planned on what was read from the pad, and shown before it is written. */
import type { Selection } from '../frame/selection-state.svelte.ts';
import type { MemoryImages } from './memory-images.svelte.ts';
import type { MemorySession } from './memory-session.svelte.ts';

export interface RestoreSources {
  readonly images: MemoryImages;
  readonly memory: MemorySession;
  readonly selection: Selection;
}

/** Why an image cannot be brought back now, one sentence; null where it can. */
export function whyNotRestored({ about, running }: MemorySession, image: string): string | null {
  if (about?.protocol == null) return 'Take the pad in hand that it is to be written to.';
  if (running) return 'Wait for the end of what runs.';
  if (about.image === null) return 'Read the memory from the pad first: a restore is planned on that.';
  if (about.image === image) return 'The pad holds this image already.';
  return about.writing ? null : 'Switch writing on for this pad first.';
}

/** Plans and asks for the preview in one go; `calibration`: the mapped places alone, `whole`: all of it. */
export async function restoreImage(
  { images, memory, selection }: RestoreSources,
  image: string,
  scope: 'calibration' | 'whole',
): Promise<void> {
  const read = memory.about?.image ?? null;
  if (read === null) return;
  await images.open(read, images.details?.map.id ?? null);
  selection.image = read;
  selection.open('memory');
  await images.planFor({ restore: { image, scope } });
  if (images.plan !== null) await memory.ask({ plan: images.plan.plan });
}
