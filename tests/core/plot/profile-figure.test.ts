import { describe, expect, it } from 'vitest';
import type { Mark } from '../../../core/plot/figure.ts';
import { profileFigure, type ProfileInput, type ProfileSeries } from '../../../core/plot/profile-figure.ts';
import { profileRule } from '../../../core/plot/profile-rule.ts';

const room = { width: 800, height: 400, letter: 11 };

function all<T>(value: T): T[] {
  return Array.from({ length: 72 }, () => value);
}

function series(part: Partial<ProfileSeries>): ProfileSeries {
  return { tone: 'now', reach: all(0.95), spread: all(0.002), onset: all(0.08), ...part };
}

function input(part: Partial<ProfileInput>): ProfileInput {
  return { series: [series({})], states: all('covered'), atLeast: all(false), ...part };
}

function ofRole(marks: readonly Mark[], role: string): Mark[] {
  return marks.filter((mark) => mark.role === role);
}

function words(marks: readonly Mark[]): string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('profileFigure', () => {
  it('draws one point for each direction and the first again at 360 degrees', () => {
    const figure = profileFigure(input({}), room);
    const [reach] = ofRole(figure.marks, 'reach');
    const d = reach?.kind === 'path' ? reach.d : '';
    expect(d.match(/[ML]/g)).toHaveLength(73);
    expect(d.startsWith(`M${figure.direction.at(0)} `)).toBe(true);
  });

  it('leaves a gap where a direction has no reach', () => {
    const reach = all<number | null>(0.95).with(20, null).with(21, null);
    const figure = profileFigure(input({ series: [series({ reach })] }), room);
    const [mark] = ofRole(figure.marks, 'reach');
    expect(mark?.kind === 'path' ? mark.d.match(/M/g) : []).toHaveLength(2);
  });

  it('holds 1.00 and every reach with its spread inside the upper pane', () => {
    const reach = all<number | null>(0.6).with(3, 1.3);
    const figure = profileFigure(input({ series: [series({ reach, spread: all(0.05) })] }), room);
    for (const value of [0.55, 1, 1.35]) {
      expect(figure.reach.at(value)).toBeGreaterThanOrEqual(figure.top - 1e-9);
      expect(figure.reach.at(value)).toBeLessThan(figure.onset.range[1]);
    }
  });

  it('magnifies a flat profile to no more than a tenth of full output', () => {
    const { reach } = profileFigure(input({ series: [series({ reach: all(1.0003) })] }), room);
    expect(reach.domain[1] - reach.domain[0]).toBeGreaterThanOrEqual(0.1);
  });

  it('keeps the upper pane above the lower one', () => {
    const figure = profileFigure(input({}), room);
    expect(figure.reach.at(figure.reach.domain[0])).toBeLessThan(figure.onset.at(figure.onset.domain[1]));
  });

  it('hatches and names what was not covered and what few turns covered', () => {
    const states = input({}).states.map((state, index) =>
      index >= 53 && index <= 56 ? ('none' as const) : index === 10 ? ('thin' as const) : state,
    );
    const figure = profileFigure(input({ states }), room);
    expect(ofRole(figure.marks, 'uncovered')).toHaveLength(1);
    expect(ofRole(figure.marks, 'thin')).toHaveLength(1);
    expect(words(figure.marks)).toEqual(expect.arrayContaining(['not covered', 'few turns']));
  });

  it('marks a reach at the limit of its field as at least, and an onset that is never met', () => {
    const atLeast = all(false).with(0, true);
    const onset = all<number | null>(0.08).with(9, null);
    const figure = profileFigure(input({ series: [series({ onset })], atLeast }), room);
    const [sign] = ofRole(figure.marks, 'atLeast');
    expect(sign).toMatchObject({ text: '≥', x: figure.direction.at(0) });
    const [never] = ofRole(figure.marks, 'never');
    expect(never).toMatchObject({ text: '×', x: figure.direction.at(45) });
  });

  it('marks no onset as never met where there is no rest to start from', () => {
    const figure = profileFigure(input({ series: [series({ onset: null })] }), room);
    expect(ofRole(figure.marks, 'never')).toHaveLength(0);
    expect(ofRole(figure.marks, 'onset')[0]).toMatchObject({ d: '' });
  });

  it('draws the onset axis from nothing even when every onset is large', () => {
    const figure = profileFigure(input({ series: [series({ onset: all(0.5) })] }), room);
    expect(figure.onset.domain[0]).toBe(0);
    expect(figure.onset.domain[1]).toBeGreaterThan(0.5);
  });
});

describe('profileRule', () => {
  it('stands at the selected direction with a dot and a number on each curve', () => {
    const both = input({ series: [series({ reach: all(0.914) }), series({ tone: 'proposed', reach: all(1.022) })] });
    const figure = profileFigure(both, room);
    const marks = profileRule(figure, both, 55, 11);
    expect(ofRole(marks, 'direction')[0]).toMatchObject({ x1: figure.direction.at(55), x2: figure.direction.at(55) });
    expect(words(marks)).toEqual(['55°', '0.914', '1.022', '8.0\u202f%', '8.0\u202f%']);
    expect(ofRole(marks, 'reach')[1]).toMatchObject({ kind: 'dot', tone: 'proposed', y: figure.reach.at(1.022) });
  });

  it('writes to the left of the rule near the right end', () => {
    const figure = profileFigure(input({}), room);
    const texts = profileRule(figure, input({}), 355, 11).flatMap((mark) =>
      mark.kind === 'text' && mark.role === 'value' ? [mark] : [],
    );
    expect(texts).toHaveLength(2);
    expect(texts.every((mark) => mark.anchor === 'end' && mark.x < figure.direction.at(355))).toBe(true);
  });

  it('writes a reach at the limit of its field as at least', () => {
    const censored = input({ atLeast: all(false).with(11, true) });
    expect(words(profileRule(profileFigure(censored, room), censored, 55, 11))).toContain('≥ 0.950');
  });

  it('tags the angle on the axis below the rule', () => {
    const figure = profileFigure(input({}), room);
    const tags = ofRole(profileRule(figure, input({}), 55, 11), 'tag');
    expect(tags[0]).toMatchObject({ kind: 'rect', x: figure.direction.at(55) - 16.5 });
    expect(tags[1]).toMatchObject({ text: '55°', x: figure.direction.at(55) });
  });

  it('covers a word of the axis whole rather than cutting into it', () => {
    const figure = profileFigure(input({}), room);
    const covers = (angle: number): number => ofRole(profileRule(figure, input({}), angle, 11), 'back').length;
    expect([covers(45), covers(55), covers(70)]).toEqual([1, 1, 0]);
  });

  it('shows the rule alone where nothing was covered', () => {
    const empty = input({ series: [series({ reach: all(null), onset: all(null) })], states: all('none') });
    expect(words(profileRule(profileFigure(empty, room), empty, 90, 11))).toEqual(['90°']);
  });
});
