/** Marks that are drawn again as they were keep their object, so that nothing of theirs is touched on the screen. */
import type { Mark } from '../../../core/plot/figure.ts';

/** The marks, each replaced by the one that stood in its place before where both are the same. */
export function reuseMarks(before: readonly Mark[], marks: readonly Mark[]): readonly Mark[] {
  return marks.map((mark, index) => {
    const old = before[index];
    return old !== undefined && isSame(old, mark) ? old : mark;
  });
}

function isSame(one: Mark, other: Mark): boolean {
  if (one.kind !== other.kind || one.role !== other.role || one.tone !== other.tone) return false;
  for (const key in one) if (one[key as keyof Mark] !== other[key as keyof Mark]) return false;
  return true;
}
