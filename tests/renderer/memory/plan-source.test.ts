import { describe, expect, it } from 'vitest';
import type { PadOwner } from '../../../core/pad/owner.ts';
import { ownerOfImage, sourceOfYours, whyForeign } from '../../../renderer/memory/plan-source.ts';
import type { OwnMapping, Taken } from '../../../renderer/stick/origin.ts';
import { mapping } from '../support/bench-stick.ts';

const pad = (serial: string | null): PadOwner => ({ vendorId: 1, productId: 2, serial, unit: null });
const survey = { pad: pad('a-1'), domain: 'sensor' } as const;
const own = (taken: Taken | null): OwnMapping => ({ ...mapping, taken });
const kept = (name: string, of: PadOwner | null): Taken => ({ by: 'kept', name, pad: of, domain: 'sensor' });

describe('numbers for a memory', () => {
  it('are refused from another pad, both named, and where they are reported counts', () => {
    expect(whyForeign('The survey', survey, pad('b-2'))).toMatch(/a-1.*b-2/u);
    expect(whyForeign('The survey', { ...survey, domain: 'reported' }, pad('a-1'))).toMatch(/reported counts/u);
    expect([pad('a-1'), pad(null), null].map((memory) => whyForeign('The survey', survey, memory))).toEqual([null, null, null]); // prettier-ignore
  });

  it('are of the survey, or of the one source outside of it that was taken', () => {
    expect(sourceOfYours('s1', survey, [own(null), own(kept('K', pad('a-1')))], ['K'])).toMatchObject({ value: { survey: 's1' } }); // prettier-ignore
    expect(sourceOfYours('s1', survey, [own(null), own(kept('K', null))], ['K'])).toMatchObject({ value: { kept: 'K' } }); // prettier-ignore
    expect(sourceOfYours('s1', survey, [own(kept('K', null))], [])).toMatchObject({ value: { file: null, domain: 'sensor' } }); // prettier-ignore
    const file: Taken = { by: 'file', name: 'f.json', pad: pad(null), domain: null };
    expect(sourceOfYours('s1', survey, [own(file)], [])).toMatchObject({ value: { file: pad(null), domain: null } });
    expect(sourceOfYours('s1', survey, [own(file), own(kept('K', null))], ['K'])).toMatchObject({ problem: { code: 'plan-two-sources' } }); // prettier-ignore
  });

  it('go into the memory of the pad that the image was read from', () => {
    const image = 'ab'.repeat(32);
    const entry = { at: '2020-01-02T03:04:05Z', why: 'read', map: null };
    const list = [{ image, size: 1, kept: [{ ...entry, pad: null }, { ...entry, pad: { ...pad('a-1'), product: 'Bench pad' } }] }]; // prettier-ignore
    expect(ownerOfImage(list, image)?.serial).toBe('a-1');
    expect(ownerOfImage(list, 'cd'.repeat(32))).toBeNull();
  });
});
