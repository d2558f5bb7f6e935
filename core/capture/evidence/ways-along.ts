/** Every way along the gate that counts. */
import type { RimEvidence, Turn } from './evidence.ts';

/** Whole turns each way that a direction needs no parts beside. */
const ENOUGH = 2;

/** Whole turns, then the parts of turns, each with what it passed where whole turns are too few: a whole turn is pressed more evenly. */
export function waysAlong({ turns, parts = [] }: Pick<RimEvidence, 'turns' | 'parts'>): readonly Turn[] {
  if (parts.length === 0) return turns;
  const isOpen = (k: number): boolean =>
    (['clockwise', 'counterClockwise'] as const).some(
      (way) => turns.filter((turn) => turn.way === way && (turn.points[k] ?? null) !== null).length < ENOUGH,
    );
  const open = (turns[0] ?? parts[0])?.points.map((_, k) => isOpen(k)) ?? [];
  return [
    ...turns,
    ...parts.map((part) => ({ ...part, points: part.points.map((point, k) => (open[k] === true ? point : null)) })),
  ];
}
