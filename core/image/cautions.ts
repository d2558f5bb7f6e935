/** What a technician is told where it counts: before something is written to a pad. */
import type { MemoryMap } from './memory-map.ts';

const ALWAYS: readonly string[] = [
  'A write that fails halfway can ruin the pad: do not unplug it and do not close this program until its end is shown.',
  'Keep a copy of the backup elsewhere too: save the image as a file before you write.',
  'Writing to the memory can end the maker’s warranty.',
  'The maker’s instructions and local rules come first.',
];

export function writeCautions(map: MemoryMap | null): string[] {
  if (map === null || map.proof === 'proven') return [...ALWAYS];
  return [
    `The map ${map.id} is unproven: its places were found or typed, and no write with it was read back and surveyed yet.`,
    ...(map.chosenFrom === undefined
      ? []
      : [
          `It was chosen out of ${map.chosenFrom} readings that fitted the image about equally well: a wrong one exchanges sticks, axes or spans.`,
        ]),
    ...ALWAYS,
  ];
}
