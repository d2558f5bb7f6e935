import { describe, expect, it } from 'vitest';
import { rangeMapping } from '../../../core/mapping/range-mapping.ts';
import type { TrackMeasures } from '../../../core/measure/measure-report.ts';
import { measureTable } from '../../../core/measure/measure-table.ts';
import { measureRest } from '../../../core/measure/rest.ts';
import { measureRim } from '../../../core/measure/rim.ts';
import { measureLog } from '../../../core/measure/timing.ts';
import { makeBenchStick } from '../../support/make-evidence.ts';
import { makeTrack } from '../../support/make-track.ts';

const nothing = {
  travel: null,
  flick: null,
  disturbance: null,
  allan: null,
  warmUp: null,
  captures: 'marked',
  lacks: [],
} as const;

function reportOf(releases: number): TrackMeasures {
  const evidence = makeBenchStick({ seed: 2, releases, rest: { x: 2100, y: 2000 }, scatter: 4, noise: 1, gate: 1500 });
  const mapping = rangeMapping(evidence.fields);
  return {
    log: measureLog(makeTrack({ reportTimes: [0, 1000, 2000] })),
    mappingFrom: 'range',
    captures: 'marked',
    sticks: {
      left: {
        rest: measureRest(evidence, mapping),
        rim: measureRim(evidence, mapping),
        ...nothing,
        mapping,
        mappingFrom: 'range',
      },
      right: { rest: null, rim: null, ...nothing, mapping, mappingFrom: 'range' },
    },
    inputs: null,
  };
}

describe('measureTable', () => {
  const sections = measureTable(reportOf(24));
  const value = (title: string, label: string) =>
    sections.find((one) => one.title === title)?.rows.find((one) => one.label === label)?.value;

  it('has the log and three sections of each stick', () => {
    expect(sections.map(({ title }) => title)).toEqual([
      'log',
      'left stick',
      'left stick, rest',
      'left stick, rim',
      'right stick',
      'right stick, rest',
      'right stick, rim',
    ]);
  });

  it('writes values with their uncertainty and says what is not known', () => {
    expect(value('left stick, rest', 'rest point x')).toMatch(/^2\d{3}\.\d ± \d\.\d$/);
    expect(value('left stick, rim', 'directions covered')).toBe('72 of 72');
    expect(value('left stick, rim', 'least reach')).toMatch(/^[67]\d\.\d\d at \d+°$/);
    expect(value('log', 'lost')).toBe('not known');
    expect(value('right stick, rest', 'rest')).toBe('no settled release');
  });

  it('writes neither NaN nor null nor undefined anywhere', () => {
    for (const section of [...sections, ...measureTable(reportOf(1))])
      for (const { label, value: written } of section.rows)
        expect(written, label).not.toMatch(/NaN|null|undefined|Infinity/);
  });
});

describe('measureTable of a log with every capture', () => {
  const drift = { x: -1.2, y: 0, u95: { x: 0.3, y: 0.2 } };
  const axis = {
    min: 840,
    max: 3290,
    missing: null,
    longestRun: null,
    runs: [],
    judgedShare: 0,
    jumps: 4,
    jumpsAt: [2500, 2510, 2520, 2530],
    backwards: 0.01,
    backwardsAt: [{ from: 1980, to: 2010.4, sweeps: 3 }],
    unsteady: [{ from: 2490, to: 2540, times: 5.25 }],
    step: 1,
  };
  const { left, right } = reportOf(24).sticks;
  const full: TrackMeasures = {
    ...reportOf(24),
    sticks: {
      left: {
        ...left!,
        travel: {
          sweeps: 8,
          x: axis,
          y: null,
          turnAngle: 4,
          turnU95: 2.5,
          skewAngle: null,
          skewU95: null,
          seenAngle: { x: 0, y: null },
        },
        flick: {
          count: 3,
          unread: 1,
          overshoot: { largest: 0.08, mean: 0.05 },
          overshootCounts: { largest: 96, mean: 60 },
          settlingUs: { p50: 61_000, max: 90_400 },
          band: { x: 6, y: 6 },
          at: [1, 2, 3],
        },
        disturbance: [{ of: 'rumble', shift: { x: 12.34, y: -1 }, u95: { x: 2.2, y: 2.2 }, startUs: 0, endUs: 1 }],
        warmUp: { dwells: 9, drift, last: drift, steady: false, seconds: 40 },
        allan: { tauUs: [1000, 2000], x: [1.25, 0.9], y: null },
      },
      right: right!,
    },
    inputs: {
      buttons: [
        { usage: 1, pressed: true, released: true, bounceMs: 7.5 },
        { usage: 2, pressed: true, released: false, bounceMs: 0 },
        { usage: 3, pressed: false, released: false, bounceMs: null },
      ],
      hat: [0, 90],
      triggers: { left: { min: 0, max: 204, back: 0, fieldMinimum: 0, fieldMaximum: 255 } },
      clicks: {},
    },
  };
  const written = (title: string) =>
    measureTable(full)
      .find((one) => one.title === title)
      ?.rows.map(({ label, value, unit }) => [label, value, unit].join(' | ').trimEnd());

  it('writes each further measure in a section of its own', () => {
    expect(written('left stick, travel')).toContain('jumps x | 4, at 2500, 2510, 2520 … |');
    expect(written('left stick, travel')).toContain('unsteady counts x | 2490 … 2540 (5.3 times) |');
    expect(written('left stick, travel')).toContain('missing counts x, longest run | too few visits to tell |');
    expect(written('left stick, travel')).toContain('turn of the part | 4.0 ± 2.5 | °');
    expect(written('left stick, flick')).toEqual([
      'flicks | 3, 1 more could not be read |',
      'overshoot, largest, mean | 8.00, 5.00 | % of full',
      'settling, median, longest | 61, 90 | ms',
    ]);
    expect(written('left stick, disturbance')?.[0]).toBe('rumble, shift x | 12.3 ± 2.2 | counts');
    expect(written('left stick, warm-up')?.[0]).toBe('warm-up | still drifting: wait |');
    expect(written('left stick, noise over time')).toContain('least Allan deviation x | 0.900 after 2 ms | counts');
    expect(written('right stick, travel')).toBeUndefined();
  });

  it('lists what was seen of the inputs', () => {
    expect(written('inputs')).toEqual([
      'buttons pressed and released | 1 |',
      'buttons that never came up | 2 |',
      'buttons not seen pressed | 3 |',
      'longest bounce | 7.5, button 1 | ms',
      'hat directions seen | 0, 90 | ° clockwise from up',
      'left trigger | 0 … 204 | counts of 0 … 255',
    ]);
  });
});
