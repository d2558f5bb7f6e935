import { describe, expect, it } from 'vitest';
import { polylinePath } from '../../../core/plot/polyline-path.ts';
import { responseFigure } from '../../../core/plot/response-figure.ts';

const room = { width: 320, height: 200, letter: 11 };

describe('responseFigure', () => {
  it('puts rest and gate at the two ends and full output on top', () => {
    const { marks, push, output } = responseFigure([{ tone: 'now', points: [0, 0, 0.5, 0.25, 1, 1] }], 'push', room);
    const drawn = marks.find(({ role }) => role === 'reach');
    expect(drawn).toMatchObject({
      kind: 'path',
      tone: 'now',
      d: polylinePath([push.at(0), output.at(0), push.at(0.5), output.at(0.25), push.at(1), output.at(1)]),
    });
    expect(output.at(1)).toBeLessThan(output.at(0));
    const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(words).toEqual(expect.arrayContaining(['rest', 'half way', 'gate', 'push', 'output']));
  });

  it('stays inside a room that is too small for it', () => {
    const tiny = responseFigure([], 'push', { width: 5, height: 5, letter: 11 });
    expect(tiny.push.range[1]).toBeGreaterThan(tiny.push.range[0]);
    expect(tiny.output.range[0]).toBeGreaterThan(tiny.output.range[1]);
  });
});
