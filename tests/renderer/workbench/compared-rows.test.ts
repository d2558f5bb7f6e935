import { describe, expect, it } from 'vitest';
import type { SurveyDifference } from '../../../core/measure/compare-surveys.ts';
import { comparedRows, comparedSentence, comparedTable } from '../../../renderer/workbench/compared-rows.ts';

const differences: SurveyDifference[] = [
  { measure: 'restX', first: 2000.4, second: 2000.9, limit: 1.46, differs: false },
  { measure: 'leastReach', first: 0.93, second: 1.01, limit: 0.0004, differs: true },
  { measure: 'toleranceRadius', first: null, second: 0.03, limit: 0.004, differs: null },
];

describe('comparedRows', () => {
  it('calls only what is beyond its limit a difference, and says what it cannot say', () => {
    expect(comparedRows(differences).map(({ verdict }) => verdict)).toEqual(['the same', 'differs', 'cannot say']);
  });

  it('writes both values, the change with its sign and the limit in the unit of the measure', () => {
    const [rest, least, tolerance] = comparedRows(differences);
    expect(rest).toMatchObject({
      label: 'rest x, counts',
      before: '2000.4',
      now: '2000.9',
      change: '+0.5',
      limit: '1.5',
    });
    expect(least).toMatchObject({ label: 'least reach', before: '0.9300', change: '+0.0800', limit: '0.0004' });
    expect(tolerance).toMatchObject({ before: '—', now: '3.00\u202f%', change: '', limit: '0.40\u202f%' });
  });

  it('counts in a sentence what differs of what can be judged', () => {
    expect(comparedSentence(comparedRows(differences))).toBe(
      '1 of 2 measures differs by more than surveying alone explains.',
    );
    expect(comparedSentence(comparedRows(differences.slice(0, 1)))).toMatch(/^None of 1/u);
    expect(comparedSentence([])).toMatch(/^Nothing can be compared/u);
  });

  it('stands as a table, the verdict last', () => {
    expect(comparedTable(comparedRows(differences)).rows[1]).toEqual([
      'least reach',
      '0.9300',
      '1.0100',
      '+0.0800',
      '0.0004',
      'differs',
    ]);
  });
});
