import { describe, expect, it } from 'vitest';
import { planControls, planReports } from '../../../core/hid/plan.ts';
import { inputs, parsed } from '../../support/hid-bytes.ts';

const BYTE = '05 01 15 00 25 7f 75 08 95 01';

describe('planReports', () => {
  it('plans every input report by its id, with the controls that hold data', () => {
    const plans = planReports(parsed(BYTE, '85 01 09 30 81 02 81 03 85 02 09 31 81 02 91 02 b1 02'));
    expect([...plans.keys()]).toEqual([1, 2]);
    expect(plans.get(1)).toMatchObject({ reportId: 1, byteLength: 2 });
    expect(plans.get(1)?.controls.map((control) => control.usage)).toEqual([48]);
    expect(plans.get(2)?.controls.map((control) => control.usage)).toEqual([49]);
  });

  it('plans under 0 where the device has no ids', () => {
    expect([...planReports(parsed(BYTE, '09 30 81 02')).keys()]).toEqual([0]);
  });

  it('plans a report of padding alone, with no controls', () => {
    expect(planReports(parsed(BYTE, '81 03')).get(0)).toMatchObject({ byteLength: 1, controls: [] });
  });

  it('leaves fields out that are longer than any number it states', () => {
    const plan = planReports(parsed('05 01 14 25 7f 75 40 95 01 09 20 81 02 75 08 09 30 81 02')).get(0);
    expect(plan?.controls.map((control) => [control.usage, control.bitOffset])).toEqual([[48, 64]]);
    expect(plan?.byteLength).toBe(9);
  });

  it('checks null states where one is declared, and of variable fields only', () => {
    const plan = planReports(parsed(BYTE, '09 30 81 42 09 31 81 02 09 32 81 40 09 33 81 42')).get(0);
    expect(plan?.nulls.map((check) => check.index)).toEqual([0, 3]);
  });
});

it('planControls takes controls in any order and with gaps', () => {
  const controls = inputs(BYTE, '09 30 81 02 09 31 81 02 09 32 81 02');
  const plan = planControls(0, 3, controls.toReversed());
  expect(plan.controls.map((control) => control.usage)).toEqual([50, 49, 48]);
});
