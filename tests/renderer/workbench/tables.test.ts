import { describe, expect, it } from 'vitest';
import { profileTable, railsTable, responseTable, restTable, rimTable } from '../../../renderer/workbench/tables.ts';
import { csvText } from '../../../renderer/kit/figures/csv-text.ts';
import { drawnRows } from '../support/drawn-rows.ts';
import { mapping, oneRelease, standUnder, wholeStick } from '../support/bench-stick.ts';

const now = standUnder(oneRelease());
const proposed = {
  ...now,
  tone: 'proposed',
  mapping: { ...mapping, x: { min: 1040, centre: 2030, max: 3000 } },
} as const;

describe('table twins', () => {
  it('give the profile one row a direction and mark the selected one', () => {
    const table = profileTable([now], [true], 90);
    expect(table.rows).toHaveLength(72);
    expect(table.selected).toBe(18);
    const rows = drawnRows(table);
    expect(rows[0]?.[2]).toBe('≥ 1.030');
    expect(rows[18]?.slice(0, 3)).toEqual(['90° up', 'covered', '1.000']);
    expect(rows[21]?.slice(0, 3)).toEqual(['105° up', 'not covered', '—']);
  });

  it('name the directions of the marked finding', () => {
    const { rows } = profileTable([now], [], null, [90]);
    expect([rows[18]?.[1], rows[19]?.[1]]).toEqual(['covered, finding', 'covered']);
  });

  it('have as many cells in a row as heads, whatever is compared', () => {
    const evidence = oneRelease();
    const both = [now, proposed];
    for (const table of [
      profileTable(both, [], null),
      restTable(evidence, both),
      rimTable(evidence, both, null),
      railsTable(evidence, both, null),
    ])
      for (const row of table.rows) expect(row).toHaveLength(table.heads.length);
  });

  it('give the plane its releases and its rim points in raw counts', () => {
    expect(drawnRows(restTable(oneRelease(), [now]))).toEqual([['1', '2030.0', '2000.0', '3.0\u202f%']]);
    expect(drawnRows(rimTable(oneRelease(), [now], null))[0]).toEqual(['0° right', '3030', '2000', '0.0°']);
    expect(restTable(wholeStick(), []).rows).toHaveLength(24);
  });

  it('give the rails what was measured, both mappings, the change and its uncertainty', () => {
    const proposal = {
      mapping: proposed.mapping,
      aim: 'full-reach' as const,
      centreBy: 'mean' as const,
      guard: 0.01,
      reasons: [{ of: 'x.min', says: '', u95: 3.4, leaveOneOut: null }],
      hides: null,
    };
    const [xMin, xCentre] = drawnRows(railsTable(oneRelease(), [now, proposed], proposal));
    expect(xMin).toEqual(['x minimum', '1030', '1000', '1040', '+40', '±3.4']);
    expect(xCentre).toEqual(['x centre', '2030.0 rest', '2000', '2030', '+30', '—']);
  });

  it('give the response its output at each twentieth of the push', () => {
    const points = Float64Array.from(Array.from({ length: 161 }, (_, step) => [step / 160, step / 320]).flat());
    const table = responseTable([{ tone: 'now', points }]);
    expect(table.rows).toHaveLength(21);
    expect(drawnRows(table)[10]).toEqual(['50\u202f%', '0.250']);
  });

  it('leave as numbers at full precision, shares as fractions, what is not known empty', () => {
    const points = Float64Array.from({ length: 42 }, (_, i) => (i % 2 === 0 ? i / 40 : (i - 1) / 120));
    expect(csvText([responseTable([{ tone: 'now', points }])]).split('\r\n')[2]).toBe(`0.05,${2 / 120}`);
    const [, first, ...others] = csvText([profileTable([now], [true], null)]).split('\r\n');
    expect(first).toMatch(/^0,covered,≥ 1\.03\d*,/u);
    expect(others[20]).toMatch(/^105,not covered,,,/u);
  });
});
