/** Whose survey may tell of a gate. */
import { describe, expect, it } from 'vitest';
import { doubtGateOwner, refuseGateOwner } from '../../../core/findings/gate-owner.ts';

const of = (serial: string | null, productId = 0x000a) => ({
  product: 'Bench pad',
  pad: { vendorId: 0x1209, productId, serial, unit: null },
});

describe('a survey that is to tell of a gate', () => {
  it('is taken of the same pad without a word', () => {
    expect(refuseGateOwner(of('A1'), of('A1'))).toBeNull();
    expect(doubtGateOwner(of('A1'), of('A1'))).toBeNull();
  });

  it('is refused of another pad, and both are named', () => {
    const refused = refuseGateOwner(of('B2'), of('A1'));
    expect(refused?.code).toBe('gate-of-other-pad');
    expect(refused?.says).toBe(
      'That survey is of another pad (Bench pad, 1209:000a, serial number B2), whose shell has a gate of its own; choose a survey of Bench pad, 1209:000a, serial number A1.',
    );
    expect(refuseGateOwner(of('A1', 0x000b), of('A1'))?.code).toBe('gate-of-other-pad');
    expect(doubtGateOwner(of('B2'), of('A1'))).toBeNull();
  });

  it('is taken with a doubt that is said where nothing tells the pads apart', () => {
    expect(refuseGateOwner(of(null), of('A1'))).toBeNull();
    expect(doubtGateOwner(of(null), of('A1'))).toBe(
      'Nothing known of both tells whether that survey is of this very pad (Bench pad, 1209:000a, serial number not known); it holds only if it was taken in this shell.',
    );
  });
});
