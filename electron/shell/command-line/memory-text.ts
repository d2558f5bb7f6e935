/** What the memory commands print: what would be written, and what a session ended with. */
import { row } from '../../../core/measure/table.ts';
import type { Reply } from '../../../shared/contract.ts';
import type { MemoryState } from './memory-progress.ts';
import { drawSections } from './tables.ts';

type Preview = Reply<'memory.preview'>;

/** Every named value old → new with its bytes, the blocks in the order of writing, and what to mind. */
export function planText({ changes, blocks, asks, cautions }: Preview): string {
  const sections = [
    {
      title: 'changes',
      rows: changes.map(({ means, offset, old, new: now }) => row(means, `${old} → ${now}`, `at ${String(offset)}`)),
    },
    {
      title: 'blocks in the order of writing',
      rows: blocks.map(({ offset, bytes }) =>
        row(`at ${String(offset)}`, `${String(bytes)} ${bytes === 1 ? 'byte' : 'bytes'}`),
      ),
    },
  ];
  const asked = asks.map(({ code, says }) => `${says} (--accept ${code})`);
  const lists = [...(asked.length === 0 ? [] : [['asked by itself', ...asked]]), ['before you confirm', ...cautions]];
  return [drawSections(sections), ...lists.map((lines) => lines.join('\n  '))].join('\n\n');
}

export function endText({ says, image, bytes, retries }: MemoryState): string {
  const end = [
    says,
    ...(image === null ? [] : [`Its image is kept: ${image}`]),
    ...(retries === 0 ? [] : [`Commands sent once more: ${String(retries)}`]),
  ].join('\n');
  if (bytes.length === 0) return end;
  const rows = bytes.map(({ offset, before, after, now, means }) =>
    row(`at ${String(offset)}`, `${before}, ${after}, ${now ?? 'not known'}`, means ?? ''),
  );
  return [end, drawSections([{ title: 'bytes that differ: before, planned, now', rows }])].join('\n\n');
}
