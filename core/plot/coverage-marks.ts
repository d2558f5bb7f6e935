/** What was not covered, or only by few turns, hatched over an unrolled 0 … 360° axis. */
import type { Coverage } from '../measure/rim-measure.ts';
import { coverageStretches, unrolledSpans } from './coverage-stretches.ts';
import type { Mark } from './figure.ts';
import type { LinearScale } from './linear-scale.ts';
import { hatch, text } from './marks.ts';
import { textWidth } from './spread-labels.ts';

/** Hatches between `top` and `bottom`, each stretch with its word once. */
export function coverageMarks(
  states: readonly Coverage[],
  direction: LinearScale,
  top: number,
  bottom: number,
  letter: number,
): Mark[] {
  const kinds = [
    { state: 'none', role: 'uncovered', words: 'not covered', spacing: letter * 0.7 },
    { state: 'thin', role: 'thin', words: 'few turns', spacing: letter * 1.5 },
  ] as const;
  return kinds.flatMap(({ state, role, words, spacing }) =>
    coverageStretches(states, state).flatMap((stretch) => {
      const spans = unrolledSpans(stretch);
      const widest = spans.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
      const middle = direction.at((widest[0] + widest[1]) / 2);
      const half = textWidth(words, letter) / 2;
      const at = Math.min(Math.max(middle, direction.range[0] + half), direction.range[1] - half);
      return [
        ...spans.map(([from, to]) =>
          hatch(
            role,
            { x: direction.at(from), y: top, width: direction.at(to) - direction.at(from), height: bottom - top },
            spacing,
          ),
        ),
        text('label', null, at, top + letter * 1.1, words),
      ];
    }),
  );
}
