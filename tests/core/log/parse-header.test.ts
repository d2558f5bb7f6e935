import { describe, expect, it } from 'vitest';
import { formatHeader } from '../../../core/log/format.ts';
import { parseHeader } from '../../../core/log/parse-header.ts';
import { header } from './format-log.ts';

function changed(change: (value: Record<string, unknown>) => void): string {
  const value = JSON.parse(formatHeader(header())) as Record<string, unknown>;
  change(value);
  return JSON.stringify(value);
}

function says(line: string): string {
  const read = parseHeader(line);
  return read.ok ? 'read' : `${read.problem.code}: ${read.problem.says}`;
}

describe('parseHeader', () => {
  it('reads what formatHeader writes', () => {
    expect(parseHeader(formatHeader(header()))).toEqual({ ok: true, value: header() });
  });

  it('takes a missing program, stage and domain for null, null and reported', () => {
    const line = changed((value) => {
      delete value['program'];
      delete value['stage'];
      delete value['domain'];
    });
    expect(parseHeader(line)).toEqual({
      ok: true,
      value: header({ program: null, stage: null, domain: 'reported' }),
    });
  });

  it('leaves keys out that it does not know', () => {
    expect(parseHeader(changed((value) => (value['weather'] = 'fair')))).toEqual({ ok: true, value: header() });
  });

  it('names another kind and another version', () => {
    expect(says(changed((value) => (value['kind'] = 'stickwright-patch')))).toContain('kind "stickwright-patch"');
    expect(says(changed((value) => (value['version'] = 2)))).toContain('has version 2 and only version 1');
  });

  it.each([
    ['version', '1', 'version must be 1'],
    ['kind', 7, 'kind must be "stickwright-report-log"'],
    ['startedAt', 7, 'startedAt must be a string'],
    ['stage', 'sold', 'stage must be "received" or "fitted" or "calibrated" or "recheck"'],
    ['domain', 'volts', 'domain must be "sensor" or "reported"'],
    ['descriptor', 5, 'descriptor must be a string'],
    ['pad', null, 'pad must be an object'],
  ])('refuses %s = %j by name', (key, value, why) => {
    expect(says(changed((all) => (all[key] = value)))).toContain(why);
  });

  it('refuses a missing or impossible part of the pad by name', () => {
    expect(says(changed((value) => (value['pad'] = { productId: 1 })))).toContain('pad.vendorId is missing');
    const pad = { ...header().pad, vendorId: 70_000 };
    expect(says(changed((value) => (value['pad'] = pad)))).toMatch(/^log-header: .*pad\.vendorId/);
  });

  it('names NaN, which JSON does not have', () => {
    const line = formatHeader(header()).replace('"version":1', '"version":NaN');
    expect(says(line)).toMatch(/^log-not-a-log: .*NaN/);
  });
});
