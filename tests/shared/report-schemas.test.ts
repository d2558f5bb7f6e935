import { describe, expect, it } from 'vitest';
import { measureReportSchema } from '../../shared/report-schemas.ts';
import { emptyReport } from '../support/empty-report.ts';

describe('schemas of the report', () => {
  it('have every key of a report', () => {
    expect(Object.keys(measureReportSchema.shape)).toEqual(expect.arrayContaining(Object.keys(emptyReport())));
  });

  it('let no number through that is none', () => {
    const report = emptyReport();
    expect(measureReportSchema.safeParse(report).success).toBe(true);
    const broken = { ...report, log: { ...report.log, rateHz: Number.NaN } };
    expect(measureReportSchema.safeParse(broken).success).toBe(false);
  });
});
