import { describe, expect, it } from 'vitest';
import { Chance } from './chance.ts';
import { drawPart } from './draw-part.ts';
import { faults, type FaultName } from './faults.ts';
import { FULL_TILT, gateRadius } from './gate.ts';
import { Noise } from './noise.ts';
import { drawPad } from './pad-plan.ts';
import type { Part } from './part.ts';
import { minus, polar, sizeOf, type Vec } from './plane.ts';
import { Stick } from './stick.ts';
import { Wiring } from './wiring.ts';

const HERE: Vec = { x: 0.4, y: 0.45 };

function faulty(name: FaultName, size: number, seed = 1): Part {
  const plan = drawPad('sensor12', new Chance(1, 'pad'));
  const part = drawPart('round', new Chance(1, 'unit'));
  return faults[name].apply({ part, plan, stale: 0 }, size, new Chance(seed, 'fault')).part;
}

/** Whether the signal of the stick at this tilt arrives as it was. */
function isLost(wiring: Wiring, t: number, tilt: Vec, sensed: Vec = HERE): boolean {
  return sizeOf(minus(wiring.carry(t, tilt, sensed, HERE), HERE)) > 1e-9;
}

describe('signals', () => {
  it('are lost on the rim of a dead sector, all of its degrees, every time, and nowhere else', () => {
    const part = faulty('dead-sector', 20);
    const wiring = new Wiring(part, new Chance(1, 'wiring'));
    for (let turn = 0; turn < 3; turn += 1) {
      const lost = Array.from({ length: 3600 }, (_, at) =>
        isLost(wiring, turn + at / 3600, polar(gateRadius(part.gate, at / 10), at / 10)),
      ).filter(Boolean).length;
      expect(lost / 10).toBeCloseTo(20, 0);
    }
    const inside = Array.from({ length: 360 }, (_, at) => isLost(wiring, 9, polar(0.9 * FULL_TILT, at)));
    expect(inside.some(Boolean)).toBe(false);
  });

  it('are lost on a third of the visits of a loose sector', () => {
    const part = faulty('loose-sector', 30);
    const wiring = new Wiring(part, new Chance(1, 'wiring'));
    let turns = 0;
    for (let turn = 0; turn < 300; turn += 1) {
      const lost = Array.from({ length: 120 }, (_, at) =>
        isLost(wiring, turn, polar(gateRadius(part.gate, 3 * at), 3 * at)),
      );
      turns += lost.some(Boolean) ? 1 : 0;
    }
    expect(turns).toBeGreaterThan(75);
    expect(turns).toBeLessThan(125);
  });

  it('are lost over a dead spot, and unsteady over a worn stretch, of so much of the full travel', () => {
    for (const name of ['dead-spot', 'worn-track'] as const) {
      const wiring = new Wiring(faulty(name, 2), new Chance(1, 'wiring'));
      const steps = 20_000;
      const lost = Array.from({ length: steps }, (_, at) => {
        const share = (2 * at) / steps - 1;
        return isLost(wiring, at / 100, polar(1, 0), { x: share, y: share });
      }).filter(Boolean).length;
      expect(lost / steps).toBeCloseTo(0.02, 3);
    }
  });

  it('go once in so many reports, a contact for up to 40 ms, a spike for one report', () => {
    const reports = 400_000;
    const runs = (name: FaultName): { begun: number; longest: number } => {
      const wiring = new Wiring(faulty(name, 20), new Chance(1, 'wiring'));
      let [begun, run, longest] = [0, 0, 0];
      for (let at = 0; at < reports; at += 1) {
        run = isLost(wiring, at / 1000, polar(1, 0)) ? run + 1 : 0;
        if (run === 1) begun += 1;
        longest = Math.max(longest, run);
      }
      return { begun, longest };
    };
    const contact = runs('contact');
    expect(contact.begun).toBeGreaterThan(650);
    expect(contact.begun).toBeLessThan(850);
    expect(contact.longest).toBeGreaterThan(30);
    const spikes = runs('spikes');
    expect(spikes.begun).toBeGreaterThan(720);
    expect(spikes.begun).toBeLessThan(880);
    expect(spikes.longest).toBeLessThanOrEqual(2);
  });

  it('have noise of the stated size, and so many times it', () => {
    const sigmaOf = (size: number): number => {
      const part = faulty('noise', size);
      const noise = new Noise({ ...part.noise, slow: 0 }, new Chance(1, 'noise'));
      const values = Array.from({ length: 20_000 }, () => noise.after(0.001));
      return Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
    };
    expect(sigmaOf(6) / sigmaOf(1)).toBeCloseTo(6, 6);
    expect(sigmaOf(1) / faulty('noise', 1).noise.white).toBeCloseTo(1, 1);
  });
});

describe('returns', () => {
  /** Places of rest after so many releases from all around, degrees. */
  function rests(part: Part, releases = 200): Vec[] {
    const stick = new Stick(part, new Chance(4, 'stick'));
    return Array.from({ length: releases }, (_, at) => {
      stick.hold(polar(FULL_TILT, 15 * at));
      stick.letGo(at);
      stick.swing(at + 0.9);
      return stick.place;
    });
  }

  it('scatter by the size of a loose return', () => {
    const places = rests(faulty('loose-return', 4), 2000);
    const mean = places.reduce((sum, { x }) => sum + x, 0) / places.length;
    const sigma = Math.sqrt(places.reduce((sum, { x }) => sum + (x - mean) ** 2, 0) / places.length);
    expect(sigma / FULL_TILT).toBeGreaterThan(0.036);
    expect(sigma / FULL_TILT).toBeLessThan(0.044);
  });

  it('take so many seconds down to 2 %, and swing over by the size of an overshoot', () => {
    // Of ten seeds some are slow all the way, some creep at the end.
    for (let seed = 0; seed < 10; seed += 1) {
      const slow = new Stick(faulty('slow-return', 1.5, seed), new Chance(4, 'stick'));
      slow.hold(polar(FULL_TILT, 0));
      slow.letGo(0);
      slow.swing(1.5);
      expect(slow.toGo / FULL_TILT).toBeCloseTo(0.02, 3);
    }
    const over = new Stick(faulty('overshoot', 20), new Chance(4, 'stick'));
    over.hold(polar(FULL_TILT, 0));
    over.letGo(0);
    const places = Array.from({ length: 3000 }, (_, at) => {
      over.swing(at / 10_000);
      return over.place.x;
    });
    const rest = places.at(-1) ?? 0;
    expect((rest - Math.min(...places)) / (FULL_TILT - rest)).toBeCloseTo(0.2, 2);
  });

  it('have two places that far apart, one that is off, or one that wanders', () => {
    const two = rests(faulty('two-rests', 6));
    const far = two.filter((place) => sizeOf(minus(place, two[0] ?? place)) > 0.03 * FULL_TILT).length;
    expect(far).toBeGreaterThan(50);
    expect(far).toBeLessThan(150);
    const odd = rests(faulty('outlier-rest', 20), 24);
    const off = odd.filter((place) => sizeOf(place) > 0.15 * FULL_TILT).length;
    expect(off).toBe(1);
    const drift = faulty('drifting-rest', 6).spring.drift;
    expect(sizeOf(drift) / FULL_TILT).toBeCloseTo(0.06, 9);
  });
});
