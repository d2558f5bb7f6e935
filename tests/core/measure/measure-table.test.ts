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
