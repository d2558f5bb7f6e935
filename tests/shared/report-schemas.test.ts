import { describe, expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { MeasureReport } from '../../core/findings/judge-track.ts';
import type { stickEvidenceSchema } from '../../shared/evidence-schemas.ts';
import { measureReportSchema } from '../../shared/report-schemas.ts';
import { emptyReport } from '../support/empty-report.ts';

type Frozen<T> = { readonly [K in keyof T]: Frozen<T[K]> };
describe('schemas of the report', () => {
  it('have the types of core: a key that core gains or loses does not compile', () => {
    expectTypeOf<Frozen<z.infer<typeof measureReportSchema>>>().toEqualTypeOf<Frozen<MeasureReport>>();
    expectTypeOf<Frozen<z.infer<typeof stickEvidenceSchema>>>().toEqualTypeOf<Frozen<StickEvidence>>();
    expect(Object.keys(measureReportSchema.shape)).toEqual(expect.arrayContaining(Object.keys(emptyReport())));
  });

  it('let no number through that is none', () => {
    const report = emptyReport();
    expect(measureReportSchema.safeParse(report).success).toBe(true);
    const broken = { ...report, log: { ...report.log, rateHz: Number.NaN } };
    expect(measureReportSchema.safeParse(broken).success).toBe(false);
  });
});
