import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { bothMappings, leftMapping, makeImage } from '../../support/make-image.ts';

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const nudge = fc.integer({ min: -20, max: 20 });

test('a restore tells each named value and region once, and brings the image back', () => {
  for (const map of bundledMaps)
    fc.assert(
      fc.property(nudge, nudge, nudge, (min, centre, max) => {
        const { x, y } = leftMapping;
        const left = { x: { min: x.min + min, centre: x.centre + centre, max: x.max + max }, y };
        const [held, target] = [{ ...bothMappings, left }, bothMappings].map((sticks) =>
          makeImage(map, { factory: sticks }),
        );
        const plan = planRestore(held!, target!, map, 'calibration', digest);
        if (!plan.ok) {
          expect(plan.problem.code).toBe('patch-nothing');
          return;
        }
        const names = plan.value.changes.flatMap(({ means }) => means.split('; '));
        expect(new Set(names).size).toBe(names.length);
        expect(applyPatch(held!, plan.value, map, digest)).toEqual({ ok: true, value: target });
      }),
      { seed: 11, numRuns: 60 },
    );
});
