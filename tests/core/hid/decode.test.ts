import { describe, expect, it } from 'vitest';
import { decodeInto } from '../../../core/hid/decode.ts';
import { planControls, planReports, type ReportPlan } from '../../../core/hid/plan.ts';
import { hexBytes, inputs, parsed } from '../../support/hid-bytes.ts';

function planOf(...descriptor: string[]): ReportPlan {
  const [plan] = planReports(parsed(...descriptor)).values();
  if (plan === undefined) throw new Error('No input report.');
  return plan;
}

function decoded(plan: ReportPlan, hex: string): number[] {
  const values = new Float64Array(plan.controls.length);
  const problem = decodeInto(plan, hexBytes(hex), values);
  if (problem !== null) throw new Error(problem.says);
  return [...values];
}

const PAGE = '05 01 09 30';

describe('decodeInto', () => {
  it('reads whole bytes, unsigned and signed', () => {
    expect(decoded(planOf(PAGE, '14 26 ff 00 75 08 95 03 81 02'), '00 80 ff')).toEqual([0, 128, 255]);
    expect(decoded(planOf(PAGE, '15 80 25 7f 75 08 95 03 81 02'), '00 80 ff')).toEqual([0, -128, -1]);
  });

  it('reads whole 16-bit words, unsigned and signed', () => {
    expect(decoded(planOf(PAGE, '14 27 ff ff 00 00 75 10 95 02 81 02'), '01 00 fe ff')).toEqual([1, 65_534]);
    expect(decoded(planOf(PAGE, '16 00 80 26 ff 7f 75 10 95 02 81 02'), '01 00 fe ff')).toEqual([1, -2]);
  });

  it('reads 32-bit words, unsigned and signed', () => {
    const hex = 'ff ff ff ff 00 00 00 80';
    expect(decoded(planOf(PAGE, '14 27 ff ff ff ff 75 20 95 02 81 02'), hex)).toEqual([4_294_967_295, 2_147_483_648]);
    expect(decoded(planOf(PAGE, '17 00 00 00 80 27 ff ff ff 7f 75 20 95 02 81 02'), hex)).toEqual([-1, -2_147_483_648]);
  });

  it('reads switches from any bit on, across bytes', () => {
    const plan = planOf('75 03 95 01 81 03 05 09 19 01 29 0a 14 25 01 75 01 95 0a 81 02');
    expect(decoded(plan, 'a8 11')).toEqual([1, 0, 1, 0, 1, 1, 0, 0, 0, 1]);
  });

  it('reads two 12-bit values from three bytes', () => {
    expect(decoded(planOf(PAGE, '14 26 ff 0f 75 0c 95 02 81 02'), '30 98 8c')).toEqual([0x830, 0x8c9]);
  });

  it('reads signed fields of odd size', () => {
    expect(decoded(planOf(PAGE, '15 fc 25 03 75 03 95 05 81 02'), 'a7 4d')).toEqual([-1, -4, -2, -2, -4]);
  });

  it('reads one signed bit as 0 or −1, as its range says', () => {
    expect(decoded(planOf(PAGE, '15 ff 25 00 75 01 95 08 81 02'), '05')).toEqual(
      [-1, 0, -1, 0, 0, 0, 0, 0].map((v) => v),
    );
  });

  it('gives NaN for a null state and the count for anything out of range without one', () => {
    const fields = '15 01 25 08 75 04 95 01';
    expect(decoded(planOf(PAGE, fields, '81 42 09 31 81 42 09 32 81 42 09 33 81 02'), '10 0f')).toEqual([
      Number.NaN,
      1,
      Number.NaN,
      0,
    ]);
  });

  it('does not take a value away that lies on a limit of the range', () => {
    expect(decoded(planOf(PAGE, '15 81 25 7f 75 08 95 03 81 42'), '81 7f 80')).toEqual([-127, 127, Number.NaN]);
  });

  it('gives the raw index of an array slot, in range or not', () => {
    expect(decoded(planOf('05 07 19 04 29 06 15 01 25 03 75 08 95 02 81 40'), '00 02')).toEqual([0, 2]);
  });

  it('leaves bytes beyond the report unread', () => {
    expect(decoded(planOf(PAGE, '14 26 ff 00 75 08 95 01 81 02'), '07 ff ff')).toEqual([7]);
  });

  it('refuses a short report and leaves the values as they were', () => {
    const plan = planOf('85 05', PAGE, '14 26 ff 00 75 08 95 03 81 02');
    const values = Float64Array.from([1, 2, 3]);
    const problem = decodeInto(plan, hexBytes('09 09'), values);
    expect(problem).toMatchObject({ code: 'report-too-short', at: 2 });
    expect(problem?.says).toContain('Report 5 has 2 bytes where the descriptor has 3');
    expect([...values]).toEqual([1, 2, 3]);
    expect(decodeInto(plan, new Uint8Array(), values)).toMatchObject({ code: 'report-too-short', at: 0 });
  });

  it('reads any choice of controls in any order', () => {
    const controls = inputs('05 01 09 30 09 31 09 32 14 26 ff 00 75 08 95 03 81 02').toReversed();
    expect(decoded(planControls(0, 3, controls), '01 02 03')).toEqual([3, 2, 1]);
  });
});
