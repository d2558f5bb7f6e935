import { describe, expect, it } from 'vitest';
import { demoNames, demos } from '../../../core/simulate/demos.ts';
import { createSimulatedPad, SimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { meanOf, readingsOf } from '../../support/simulated-readings.ts';

function liveBusily(pad: SimulatedPad, steps: readonly number[]): string {
  const lines: string[] = [];
  pad.hand.pushAndLetGo('left', 30);
  pad.hand.turn('right', 1, 'clockwise');
  for (const step of steps)
    pad.advance(step, (t, id, payload) => lines.push(`${t} ${id} ${Buffer.from(payload).toString('hex')}`));
  return lines.join('\n');
}

function restPoint(pad: SimulatedPad, toward: number): { x: number; y: number } {
  pad.hand.pushAndLetGo('left', toward);
  readingsOf(pad, 1.2);
  const dwell = readingsOf(pad, 0.3);
  return { x: meanOf(dwell, (reading) => reading.leftX), y: meanOf(dwell, (reading) => reading.leftY) };
}

function restPoints(name: (typeof demoNames)[number], seed: number): { x: number; y: number }[] {
  const pad = createSimulatedPad(name, seed);
  return Array.from({ length: 24 }, (_, index) => restPoint(pad, index * 105));
}

function scatterOf(points: readonly { x: number; y: number }[]): number {
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  return Math.max(...points.map((point) => Math.hypot(point.x - x, point.y - y)));
}

describe('the simulated pad', () => {
  it('sends the same bytes at the same times for the same seed', () => {
    for (const name of demoNames) {
      const first = liveBusily(createSimulatedPad(name, 7), [2_000_000]);
      expect(liveBusily(createSimulatedPad(name, 7), [2_000_000])).toBe(first);
      expect(liveBusily(createSimulatedPad(name, 8), [2_000_000])).not.toBe(first);
    }
  });

  it('sends the same bytes whether its time passes at once or bit by bit', () => {
    const atOnce = liveBusily(createSimulatedPad('plain', 3), [1_000_000]);
    const reports = atOnce.split('\n').map((line) => Number(line.split(' ')[0]));
    expect(liveBusily(createSimulatedPad('plain', 3), [...reports, 1_000_000])).toBe(atOnce);
  });

  it('keeps its report rate within the jitter, at 1,000, 250 and 125 Hz', () => {
    for (const [pad, rate] of [
      [createSimulatedPad('healthy', 1), 1000],
      [createSimulatedPad('healthy', 1, { rateHz: 250 }), 250],
      [createSimulatedPad('plain', 1), 250],
      [createSimulatedPad('plain', 1, { rateHz: 125 }), 125],
    ] as const) {
      const times = readingsOf(pad, 4).map((reading) => reading.t);
      expect(Math.abs(times.length - 4 * rate)).toBeLessThanOrEqual(1);
      const intervals = times.slice(1).map((t, index) => t - times[index]!);
      expect(Math.min(...intervals)).toBeGreaterThan(0.7e6 / rate);
      expect(Math.max(...intervals)).toBeLessThan(1.3e6 / rate);
      expect(new Set(intervals).size).toBeGreaterThan(20);
    }
  });

  it('rests within some ten counts of its middle, and never twice at quite the same place', () => {
    const points = restPoints('healthy', 5);
    const scatter = scatterOf(points);
    expect(scatter).toBeGreaterThan(5);
    expect(scatter).toBeLessThan(20);
    for (const point of points) {
      expect(Math.abs(point.x - 2061)).toBeLessThan(25);
      expect(Math.abs(point.y - 2038)).toBeLessThan(25);
    }
  });

  it('rests on the side that it came from', () => {
    const pad = createSimulatedPad('healthy', 9);
    const fromRight = [0, 1, 2, 3, 4].map(() => restPoint(pad, 0).x);
    const fromLeft = [0, 1, 2, 3, 4].map(() => restPoint(pad, 180).x);
    expect(Math.min(...fromRight)).toBeGreaterThan(Math.max(...fromLeft));
  });

  it('rests 90 counts to the right when it is off centre, and further apart when it is worn', () => {
    const offCentre = restPoints('off-centre', 5);
    const meanX = offCentre.reduce((sum, point) => sum + point.x, 0) / offCentre.length;
    expect(Math.abs(meanX - (2061 + 90))).toBeLessThan(6);
    expect(scatterOf(restPoints('worn', 5))).toBeGreaterThan(1.5 * scatterOf(restPoints('healthy', 5)));
  });

  it('reads one or two counts of noise while nobody touches it', () => {
    const readings = readingsOf(createSimulatedPad('healthy', 2), 2);
    const mean = meanOf(readings, (reading) => reading.leftX);
    const sigma = Math.sqrt(meanOf(readings, (reading) => (reading.leftX - mean) ** 2));
    expect(sigma).toBeGreaterThan(1);
    expect(sigma).toBeLessThan(2);
  });

  it('is stopped by its gate all round, a fifth short to the right where its range is short', () => {
    const extremesOf = (name: (typeof demoNames)[number]): { right: number; left: number } => {
      const pad = createSimulatedPad(name, 4);
      pad.hand.turn('left', 2, 'counterClockwise');
      const xs = readingsOf(pad, 5).map((reading) => reading.leftX);
      return { right: Math.max(...xs) - 2061, left: 2061 - Math.min(...xs) };
    };
    const healthy = extremesOf('healthy');
    expect(Math.abs(healthy.right - 1230)).toBeLessThan(30);
    expect(Math.abs(healthy.left - 1230)).toBeLessThan(30);
    const short = extremesOf('short-range');
    expect(short.left).toBeGreaterThan(1200);
    expect(short.right / short.left).toBeCloseTo(0.8, 1);
  });

  it('never reads past the limits of its sensor', () => {
    const sound = demos.healthy.build;
    const left = sound.sticks.left;
    const clipped = { ...left, x: { ...left.x, clip: { low: 1000, high: 2900 } } };
    const pad = new SimulatedPad({ ...sound, sticks: { ...sound.sticks, left: clipped } }, 1, 'clipped');
    pad.hand.turn('left', 2, 'clockwise');
    const xs = readingsOf(pad, 4).map((reading) => reading.leftX);
    expect(Math.max(...xs)).toBe(2900);
    expect(Math.min(...xs)).toBe(1000);
    expect(xs.filter((x) => x === 2900).length).toBeGreaterThan(50);
  });

  it('turns as often as asked, in the way asked, and then lets go', () => {
    for (const way of ['clockwise', 'counterClockwise'] as const) {
      const pad = createSimulatedPad('healthy', 6);
      pad.hand.turn('right', 3, way);
      let turned = 0;
      let before: number | null = null;
      while (pad.hand.holds('right')) {
        for (const reading of readingsOf(pad, 0.01)) {
          const x = reading.rightX - 2044;
          const y = 2055 - reading.rightY;
          if (Math.hypot(x, y) < 1000) continue;
          const angle = Math.atan2(y, x);
          const step = before === null ? 0 : Math.atan2(Math.sin(angle - before), Math.cos(angle - before));
          turned += step;
          before = angle;
        }
        expect(pad.nowMicros).toBeLessThan(10_000_000);
      }
      const turns = (way === 'clockwise' ? -turned : turned) / (2 * Math.PI);
      expect(turns).toBeGreaterThan(3);
      expect(turns).toBeLessThan(3.3);
    }
  });

  it('sweeps slowly from the gate opposite through the rest to the gate it was sent to, and then lets go', () => {
    for (const [toward, axis] of [
      [0, 'x'],
      [180, 'x'],
      [90, 'y'],
      [270, 'y'],
    ] as const) {
      const pad = createSimulatedPad('healthy', 21);
      pad.hand.sweep('left', toward);
      const along: number[] = [];
      const across: number[] = [];
      while (pad.hand.holds('left')) {
        readingsOf(pad, 0.01);
        const tilt = pad.hand.tilt('left');
        const sign = toward < 180 ? 1 : -1;
        along.push(sign * tilt[axis]);
        across.push(tilt[axis === 'x' ? 'y' : 'x']);
        expect(pad.nowMicros).toBeLessThan(6_000_000);
      }
      const start = along.indexOf(Math.min(...along));
      const end = along.findIndex((one) => one > 0.98);
      expect(along[start]).toBeLessThan(-0.98);
      expect((end - start) / 100).toBeGreaterThan(2);
      expect((end - start) / 100).toBeLessThan(4);
      for (let i = start + 1; i < end; i += 1) expect(along[i]! - along[i - 1]!).toBeLessThan(0.02);
      expect(Math.max(...across.map(Math.abs))).toBeLessThan(0.2);
    }
  });

  it('flicks to full tilt and is let go within half a second', () => {
    const pad = createSimulatedPad('healthy', 22);
    pad.hand.flick('left', 90);
    const ys = readingsOf(pad, 0.52).map((reading) => 2038 - reading.leftY);
    expect(Math.max(...ys)).toBeGreaterThan(1150);
    expect(pad.hand.holds('left')).toBe(false);
    readingsOf(pad, 0.3);
    const rest = readingsOf(pad, 0.2).map((reading) => Math.abs(reading.leftY - 2038));
    expect(Math.max(...rest)).toBeLessThan(25);
  });

  it('reports a pressed button for as long as it is pressed', () => {
    const pad = createSimulatedPad('plain', 1);
    pad.hand.press(3, 200);
    pad.hand.press(14, 100);
    const readings = readingsOf(pad, 0.4);
    const down = (button: number): number =>
      readings.filter((reading) => (reading.buttons & (1 << (button - 1))) !== 0).length;
    expect(Math.abs(down(3) - 50)).toBeLessThanOrEqual(1);
    expect(Math.abs(down(14) - 25)).toBeLessThanOrEqual(1);
    expect(down(1)).toBe(0);
  });

  it('reports eight bits after its own mapping where it is an ordinary pad', () => {
    const pad = createSimulatedPad('plain', 2);
    expect(meanOf(readingsOf(pad, 0.5), (reading) => reading.leftX)).toBeCloseTo(127.5, 0);
    pad.hand.turn('left', 1, 'clockwise');
    const xs = readingsOf(pad, 3).map((reading) => reading.leftX);
    expect(Math.max(...xs)).toBe(255);
    expect(Math.min(...xs)).toBe(0);
  });

  it('wanders all over the inside of its gate until it is left alone', () => {
    const pad = createSimulatedPad('healthy', 11);
    pad.hand.does('left', 'wander');
    const away = readingsOf(pad, 20).map((reading) => Math.hypot(reading.leftX - 2061, reading.leftY - 2038));
    expect(Math.max(...away)).toBeGreaterThan(900);
    expect(pad.hand.holds('left')).toBe(true);
    pad.hand.does('left', 'rest');
    readingsOf(pad, 0.5);
    const rest = readingsOf(pad, 0.2).map((reading) => Math.hypot(reading.leftX - 2061, reading.leftY - 2038));
    expect(Math.max(...rest)).toBeLessThan(30);
  });
});

describe('a pad that reports only what changed', () => {
  it('is silent while nothing does, and never repeats itself', () => {
    const sound = demos.plain.build;
    const pad = new SimulatedPad({ ...sound, onChange: true }, 4, 'changes');
    const seen: string[] = [];
    pad.hand.pushAndLetGo('left', 0);
    pad.advance(3_000_000, (_, __, payload) => seen.push(Buffer.from(payload).toString('hex')));
    expect(seen.length).toBeGreaterThan(20);
    expect(seen.length).toBeLessThan(700);
    expect(seen.every((one, i) => one !== seen[i - 1])).toBe(true);
  });
});
