import { describe, expect, it } from 'vitest';
import { formatMappingFile, parseMappingFile } from '../../../core/mapping/mapping-file.ts';

const axis = { min: 0, centre: 127.5, max: 255 };
const left = { x: axis, y: axis };
const file = { kind: 'stickwright-mapping', version: 1, sticks: { left } };

function refusal(value: unknown): string {
  const read = parseMappingFile(value);
  return read.ok ? 'no refusal' : read.problem.says;
}

describe('parseMappingFile', () => {
  it('reads a file without pad and domain', () => {
    expect(parseMappingFile(file)).toEqual({ ok: true, value: { pad: null, domain: null, sticks: { left } } });
  });

  it('reads back what formatMappingFile wrote, for one stick and for two', () => {
    const whole = {
      pad: { vendorId: 0x1234, productId: 7, serial: null, unit: '0c' },
      domain: 'sensor',
      sticks: { left, right: left },
    } as const;
    expect(parseMappingFile(JSON.parse(formatMappingFile(whole)))).toEqual({ ok: true, value: whole });
    const named = { ...whole, name: 'soft spring' };
    expect(parseMappingFile(JSON.parse(formatMappingFile(named)))).toEqual({ ok: true, value: named });
    const bare = { pad: null, domain: null, sticks: { right: left } };
    expect(parseMappingFile(JSON.parse(formatMappingFile(bare)))).toEqual({ ok: true, value: bare });
  });

  it('passes over keys of later versions', () => {
    expect(parseMappingFile({ ...file, made: 'later' }).ok).toBe(true);
  });

  it.each<[unknown, string]>([
    [undefined, 'it is missing'],
    [null, 'it must be an object'],
    [[1, 2], 'it must be an object'],
    [{ ...file, kind: 'stickwright-chain' }, 'kind must be "stickwright-mapping"'],
    [{ ...file, version: 2 }, 'version must be 1'],
    [{ ...file, sticks: {} }, 'holds no stick'],
    [{ ...file, sticks: { middle: left } }, 'holds no stick'],
    [{ ...file, sticks: { left: { x: axis } } }, 'sticks.left.y is missing'],
    [{ ...file, sticks: { left: { x: { ...axis, min: '0' }, y: axis } } }, 'sticks.left.x.min must be a number'],
    [{ ...file, sticks: { left: { x: { ...axis, min: Number.NaN }, y: axis } } }, 'sticks.left.x.min is not a finite'],
    [{ ...file, sticks: { right: { x: { ...axis, min: 128 }, y: axis } } }, 'right stick'],
    [{ ...file, domain: 'volts' }, 'domain must be "sensor" or "reported"'],
  ])('refuses %o in one sentence', (value, says) => {
    expect(refusal(value)).toContain(says);
  });
});
