import { describe, expect, it } from 'vitest';
import { ledgerRows, ledgerTable, ledgerText, writeDifference } from '../../../renderer/workbench/ledger.ts';
import { count } from '../../../core/plot/number-text.ts';
import { headOf } from '../../../renderer/kit/figures/table.ts';
import { reportedFields } from '../../support/fields.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';
import { mapping, oneRelease, standUnder, wholeStick } from '../support/bench-stick.ts';

function cell(rows: ReturnType<typeof ledgerRows>, label: string): string {
  const found = rows.find((row) => row.label.startsWith(label))?.cells[0];
  return found === undefined ? 'no such row' : `${found.value} ${found.beside}`.trim();
}

describe('ledgerRows', () => {
  it('writes the measures of a whole stick with their uncertainty', () => {
    const standing = standUnder(wholeStick());
    const rows = ledgerRows([standing], 'sensor');
    expect(cell(rows, 'least reach')).toMatch(/^0\.9\d\d at \d+°$/);
    expect(cell(rows, 'rest offset')).toMatch(/^\d\.\d\u202f% ±\d\.\d$/);
    expect(cell(rows, 'leaks, of 24')).toBe('0 ≤ 11.7\u202f%');
    expect(rows.find((row) => row.label === 'full reach, of 72')).toBeDefined();
    expect(cell(rows, 'rest scatter')).toBe(`${standing.rest?.enclosing.radius.toFixed(1) ?? ''} counts`);
  });

  it('defines every measure', () => {
    for (const row of ledgerRows([standUnder(wholeStick())], 'sensor'))
      expect(row.definition.length).toBeGreaterThan(30);
  });

  it('leaves what one release cannot state open', () => {
    const rows = ledgerRows([standUnder(oneRelease())], 'sensor');
    expect(cell(rows, 'tolerance radius')).toBe('—');
    expect(cell(rows, 'rest offset')).toBe('3.0\u202f%');
    expect(cell(rows, 'leaks, of 1')).toBe('0 ≤ 95.0\u202f%');
    expect(cell(rows, 'hides')).toBe('1 of 1 seen');
    expect(cell(rows, 'smallest zone, seen')).toBe('3.0\u202f%');
    expect(cell(rows, 'cost in onset')).toBe('0.0–6.0\u202f%');
  });

  it('leaves everything of the rim open without a rim', () => {
    const rows = ledgerRows([standUnder(makeEvidence({ dwells: [{ point: { x: 2000, y: 2000 } }] }))], 'sensor');
    for (const label of ['least reach', 'mean radial error', 'full reach', 'overreach'])
      expect(cell(rows, label)).toBe('—');
  });
});

describe('the difference', () => {
  it('is of the last two mappings, with its sign; what cannot be seen is 0', () => {
    const standings = [
      standUnder(wholeStick()),
      standUnder(wholeStick(), { ...mapping, x: { ...mapping.x, max: 2900 } }),
    ];
    const rows = ledgerRows(standings, 'sensor');
    const of = (label: string): string | undefined => rows.find((row) => row.label.startsWith(label))?.difference;
    expect(of('overreach')).toMatch(/^\+\d+\.\d\u202f%$/);
    expect(of('leaks')).toBe('0');
    expect(of('rest scatter')).toBe('');
    expect(writeDifference(-0.0004, 'share')).toBe('0');
    expect(writeDifference(-0.0121, 'reach')).toBe('\u22120.012');
  });
});

describe('a reach at the limit of its field', () => {
  const eightBits = { x: { min: 0, centre: 127.5, max: 255 }, y: { min: 0, centre: 127.5, max: 255 } };
  const clipped = makeEvidence({
    fields: reportedFields,
    dwells: [{ point: { x: 128, y: 127 } }],
    turns: sixTurns((degrees) => (degrees === 0 ? 127 : 120)),
    about: { x: 128, y: 127 },
  });

  it('is "at least" where counts are reported, and only where it stands', () => {
    const rows = ledgerRows([standUnder(clipped, eightBits)], 'reported');
    expect(cell(rows, 'overreach')).toBe('≥ 0.0\u202f% at 0°');
    expect(cell(rows, 'least reach')).toMatch(/^0\.9\d\d at/);
  });

  it('is what it is where the counts are the sensor’s own', () => {
    expect(cell(ledgerRows([standUnder(clipped, eightBits)], 'sensor'), 'overreach')).toBe('0.0\u202f% at 0°');
  });
});

describe('ledgerTable', () => {
  it('holds the measures with what they mean, then the six numbers of each mapping and their difference', () => {
    const other = { ...mapping, x: { ...mapping.x, max: mapping.x.max + 12 } };
    const standings = [
      standUnder(wholeStick(), mapping),
      { ...standUnder(wholeStick(), other), tone: 'yours' as const },
    ];
    const { heads, rows } = ledgerTable(standings, 'sensor');
    expect(heads.map((head) => headOf(head).says)).toEqual(['measure', standings[0]!.tone, 'yours', 'difference']);
    expect(heads.map((head) => headOf(head).title).at(-1)).toBe(`yours − ${standings[0]!.tone}`);
    expect(rows).toHaveLength(ledgerRows(standings, 'sensor').length + 6);
    const [label, now, , difference] = rows[0]!;
    const [least] = ledgerRows(standings, 'sensor');
    expect(label).toEqual({ says: 'least reach', definition: least!.definition });
    expect(now).toEqual({ says: least!.cells[0]!.value, beside: least!.cells[0]!.beside });
    expect(difference).toBe(least!.difference);
    const maximum = rows.find(([name]) => name === 'x maximum');
    expect(maximum).toEqual(['x maximum', count(mapping.x.max), count(mapping.x.max + 12), '+12']);
  });
});

describe('ledgerText', () => {
  it('gives one line a number, tabs between and plain spaces before the signs', () => {
    const text = ledgerText('s1, left stick', [standUnder(wholeStick(), mapping)], 'sensor');
    const lines = text.trimEnd().split('\n');
    expect(lines[0]).toBe('s1, left stick\tnow');
    expect(lines).toContain('leaks, of 24\t0 ≤ 11.7 %');
    expect(lines.slice(-6)).toEqual([
      'x min\t1000',
      'x centre\t2000',
      'x max\t3000',
      'y min\t1000',
      'y centre\t2000',
      'y max\t3000',
    ]);
    expect(text).not.toContain('\u202f');
  });
});
