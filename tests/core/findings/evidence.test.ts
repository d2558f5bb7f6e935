/** What findings look at in the log beyond its measures: readings that pile up, prompts, stored layers. */
import { describe, expect, it } from 'vitest';
import { pinnedSides } from '../../../core/findings/pinned-sides.ts';
import { promptedWays } from '../../../core/findings/prompted-ways.ts';
import { stickLayers } from '../../../core/findings/stored-layers.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { applyFault, type FaultName } from '../../../core/simulate/faults.ts';
import { usualSpot } from '../../../core/simulate/fault-spot.ts';
import { drawUnit } from '../../../core/simulate/draw-unit.ts';
import { unsettledNoise } from '../../../core/findings/unsettled-noise.ts';
import { surveyUnit } from '../../blind/survey-unit.ts';

const rest = { x: 2048, y: 2048 };
const noise = { x: 1.2, y: 1.2 };
const step = { x: 1, y: 1 };
const unit = drawUnit(8, { rateHz: 250 });

function surveyed(fault: FaultName, size: number, spot = usualSpot) {
  return surveyUnit(applyFault(unit, fault, size, spot), 8);
}

describe('sides where readings pile up', () => {
  it('are seen where a sensor is at its limit, on its own side only', () => {
    const pinned = pinnedSides(surveyed('clipped-sensor', 4), 'left', noise, step);
    expect(pinned.map(({ axis, side }) => [axis, side])).toEqual([['x', 1]]);
    const up = pinnedSides(surveyed('clipped-sensor', 4, { ...usualSpot, axis: 'y' }), 'left', noise, step);
    expect(up.map(({ axis, side }) => [axis, side])).toEqual([['y', 1]]);
  });

  it('are not seen in a healthy stick, and not claimed without noise to tell them by', () => {
    expect(pinnedSides(surveyUnit(unit, 8), 'left', noise, step)).toEqual([]);
    const clipped = surveyed('clipped-sensor', 4);
    expect(pinnedSides(clipped, 'left', null, step)).toEqual([]);
    expect(pinnedSides(clipped, 'left', { x: null, y: 0.1 }, step)).toEqual([]);
    expect(pinnedSides(clipped, 'right', noise, step)).toEqual([]);
  });
});

describe('where the stick went when it was asked to go somewhere', () => {
  it('tells how it is wired', () => {
    const wiring = (fault: FaultName, spot = usualSpot) => promptedWays(surveyed(fault, 1, spot), 'left', rest)?.wiring;
    expect(promptedWays(surveyUnit(unit, 8), 'left', rest)).toMatchObject({ wiring: 'as it should be', astray: 0 });
    // The y count grows downwards: exchanged with x, each of them comes out the other way round.
    expect(wiring('swapped-axes')?.startsWith('swapped')).toBe(true);
    expect(wiring('inverted-axis')).toBe('x inverted');
    expect(wiring('inverted-axis', { ...usualSpot, axis: 'y' })).toBe('y inverted');
  });

  it('says nothing without prompts', () => {
    const track = surveyUnit(unit, 8);
    const unprompted = { ...track, marks: track.marks.filter(({ name }) => name !== 'toward') };
    expect(promptedWays(unprompted, 'left', rest)).toBeNull();
    expect(promptedWays(track, 'right', rest)).toBeNull();
  });
});

describe('noise of a stick that never settles', () => {
  it('is that of its sensors, on its own axis', () => {
    const noise = unsettledNoise(surveyed('noisy-joint', 9), 'left', { x: 1, y: 1 })!;
    const { x, y } = unit.sticks.left;
    expect(noise.x / (9 * x.noise)).toBeCloseTo(1, 1);
    expect(noise.y / y.noise).toBeCloseTo(1, 0);
    expect(unsettledNoise(surveyUnit(unit, 8), 'right', { x: 1, y: 1 })).toBeNull();
  });
});

describe('what is stored of a stick', () => {
  const { firmware } = demos.healthy.build;
  const mark = (detail: Record<string, unknown>) => [{ t: 0, name: 'layers', detail }];

  it('is read layer by layer', () => {
    expect(stickLayers(mark({ layers: { user: null, factory: firmware } }), 'left')).toEqual({
      user: null,
      factory: firmware.left,
    });
    expect(stickLayers(mark({ layers: { user: firmware, factory: firmware } }), 'right')?.user).toEqual(firmware.right);
  });

  it('is nothing without a mark, and a layer that makes no sense is none', () => {
    expect(stickLayers([], 'left')).toBeNull();
    expect(stickLayers(mark({ layers: 7 }), 'left')).toBeNull();
    expect(stickLayers(mark({ layers: { user: { left: { x: 1 } } } }), 'left')).toEqual({ user: null, factory: null });
  });
});
