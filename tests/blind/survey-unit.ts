/** A whole survey of one stick of a simulated pad in fast time: its report bytes go through the product's own decoding. */
import { TrackBuilder } from '../../core/capture/evidence/build-track.ts';
import { releaseDirection } from '../../core/capture/guide/release-directions.ts';
import type { Track } from '../../core/capture/evidence/track.ts';
import { findProfile } from '../../core/pad/profiles.ts';
import type { PadBuild } from '../../core/simulate/build.ts';
import { SimulatedPad } from '../../core/simulate/simulated-pad.ts';

const STICK = 'left';
const RELEASES = 24;
const TURNS = 3;
/** Both axes both ways, three times. */
const SWEEPS = 16;
const BUTTONS = 16;
/** Warm-up: a release every three seconds. */
const WARMING = 10;
const CLICK = 11;
const CLICKS = 6;

/** Hex of bytes, for the header. */
function hexOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Does what a guided survey asks for, with the marks that its recorder writes. `isLong`: a warm-up before the rest and the rest
 * with the click held, too.
 */
export function surveyUnit(build: PadBuild, seed: number, isLong = false): Track {
  const pad = new SimulatedPad(build, seed, `unit-${seed}`);
  const builder = new TrackBuilder();
  const profile = findProfile(pad.identity.vendorId, pad.identity.productId);
  builder.header({
    kind: 'stickwright-report-log',
    version: 1,
    program: null,
    startedAt: '2024-01-01T00:00:00.000Z',
    stage: null,
    domain: profile?.domain ?? 'reported',
    pad: { ...pad.identity, unit: null },
    descriptor: hexOf(pad.descriptor),
    profile: profile?.id ?? null,
  });
  const mark = (name: string, detail: Record<string, unknown> = {}): void => {
    builder.mark({ t: pad.nowMicros, name, detail: { stick: STICK, ...detail } });
  };
  const wait = (seconds: number): void => {
    pad.advance(pad.nowMicros + Math.round(seconds * 1e6), (t, id, bytes) => {
      builder.report(t, id, bytes);
    });
  };
  const untilLetGo = (): void => {
    do wait(0.02);
    while (pad.hand.holds(STICK));
  };
  const capture = (purpose: string, act: () => void, detail: Record<string, unknown> = {}): void => {
    mark('capture', { purpose, edge: 'begin', ...detail });
    act();
    mark('capture', { purpose, edge: 'end', ...detail });
    wait(0.1);
  };
  // The plain pad has reported through its mapping already; nothing is known of what it stores.
  if (build.family === 'sensor') builder.mark({ t: 0, name: 'layers', detail: { ...pad.layers } });
  wait(0.3);
  if (isLong) {
    mark('warmUp', { edge: 'begin' });
    for (let release = 0; release < WARMING; release += 1) {
      pad.hand.pushAndLetGo(STICK, releaseDirection(release));
      untilLetGo();
      mark('release');
      wait(0.5);
      mark('dwell', { edge: 'begin' });
      wait(0.5);
      mark('dwell', { edge: 'end' });
      wait(1.2);
    }
    mark('warmUp', { edge: 'end' });
  }
  capture('rest', () => {
    for (let release = 0; release < RELEASES; release += 1) {
      const angle = releaseDirection(release);
      mark('toward', { angle });
      pad.hand.pushAndLetGo(STICK, angle);
      untilLetGo();
      mark('release');
      wait(1);
    }
  });
  capture('rim', () => {
    for (const way of ['clockwise', 'counterClockwise'] as const) {
      pad.hand.turn(STICK, TURNS, way);
      untilLetGo();
      wait(0.4);
    }
  });
  capture('travel', () => {
    for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
      const angle = [0, 180, 90, 270][sweep % 4] ?? 0;
      mark('toward', { angle });
      pad.hand.sweep(STICK, angle);
      untilLetGo();
      wait(0.3);
    }
  });
  capture('flick', () => {
    for (const angle of [0, 90, 180, 270]) {
      mark('toward', { angle });
      pad.hand.flick(STICK, angle);
      untilLetGo();
      mark('release');
      wait(0.8);
    }
  });
  if (isLong)
    capture(
      'disturbance',
      () => {
        for (let press = 0; press < CLICKS; press += 1) {
          pad.hand.press(CLICK, 900);
          wait(0.2);
          mark('dwell', { edge: 'begin' });
          wait(0.6);
          mark('dwell', { edge: 'end' });
          wait(0.5);
        }
      },
      { of: 'click' },
    );
  mark('capture', { purpose: 'inputs', edge: 'begin', stick: null });
  for (let press = 0; press < 2 * BUTTONS; press += 1) {
    pad.hand.press(1 + (press % BUTTONS), 80);
    wait(0.16);
  }
  mark('capture', { purpose: 'inputs', edge: 'end', stick: null });
  const track = builder.finish();
  if (!track.ok) throw new Error(track.problem.says);
  return track.value;
}
