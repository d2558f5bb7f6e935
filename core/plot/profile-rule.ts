/** The selected direction, drawn over an unrolled profile. */
import { directionIndex } from '../geometry/directions.ts';
import type { Mark } from './figure.ts';
import type { LinearScale } from './linear-scale.ts';
import { dot, line, text } from './marks.ts';
import { percent } from './number-text.ts';
import type { ProfileFigure, ProfileInput } from './profile-figure.ts';
import { spreadLabels } from './spread-labels.ts';

/** The selected direction over a profile: a rule, and on each curve a dot with its number beside it. */
export function profileRule(figure: ProfileFigure, input: ProfileInput, angle: number, letter: number): Mark[] {
  const x = figure.direction.at(angle);
  const index = directionIndex(angle);
  const right = angle <= 270;
  const curve = (role: 'reach' | 'onset', scale: LinearScale, write: (value: number) => string): Mark[] => {
    const found = input.series.flatMap((series) => {
      const value = series[role]?.[index];
      return value === null || value === undefined ? [] : [{ tone: series.tone, value, y: scale.at(value) }];
    });
    const places = spreadLabels(
      found.map(({ y }) => ({ at: y, size: letter * 1.2 })),
      Math.min(...scale.range) - letter,
      Math.max(...scale.range) + letter,
    );
    return found.flatMap(({ tone, value, y }, at) => [
      dot(role, tone, x, y, letter * 0.3),
      text(
        'value',
        tone,
        x + (right ? 1 : -1) * letter * 0.8,
        (places[at] ?? y) + letter * 0.35,
        write(value),
        right ? 'start' : 'end',
      ),
    ]);
  };
  return [
    line('direction', null, x, figure.top, x, figure.bottom),
    ...tag(figure, x, `${angle}°`, letter),
    ...curve('reach', figure.reach, (value) => `${input.atLeast[index] === true ? '≥ ' : ''}${value.toFixed(3)}`),
    ...curve('onset', figure.onset, (value) => percent(value)),
  ];
}

/** The angle on the axis. A word of the axis that it would cut into is covered whole. */
function tag(figure: ProfileFigure, x: number, words: string, letter: number): Mark[] {
  const y = figure.bottom + letter * 0.4;
  const height = letter * 1.6;
  const half = letter * 1.5;
  const cut = figure.words.filter(({ at, width }) => Math.abs(at - x) < half + width / 2);
  return [
    ...cut.map(({ at, width }): Mark => ({
      kind: 'rect',
      role: 'back',
      tone: null,
      x: at - width / 2,
      y,
      width,
      height,
    })),
    { kind: 'rect', role: 'tag', tone: null, x: x - half, y, width: half * 2, height },
    text('tag', null, x, figure.height - letter * 0.6, words),
  ];
}
