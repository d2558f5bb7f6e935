/** Releases of a stick from all around, as a good hand does them, or with a slip. */
import { releaseDirection } from '../../../core/capture/guide/release-directions.ts';
import type { Bench } from './bench.ts';
import type { Chance } from './chance.ts';
import { FULL_TILT } from './gate.ts';
import type { Hand } from './hand.ts';
import { plus, polar, sizeOf } from './plane.ts';
import type { Slip } from './slips.ts';

const RELEASES = 24;
const DWELL = 0.5;
/** Degrees of tilt at which a stick that swings back stands still to the eye. */
const STILL = 0.1;
const TOUCHED = 0.08;

export function takeReleases(bench: Bench, hand: Hand, chance: Chance, slip: Slip | null): void {
  const { style } = bench.unit;
  const odd = chance.whole(4, RELEASES - 4);
  const side = chance.between(0, 360);
  for (let release = 0; release < RELEASES; release += 1) {
    const asked = slip === 'one-sided-releases' ? side + chance.between(-30, 30) : releaseDirection(release);
    const angle = releaseDirection(release);
    if (!style.early) bench.markStick('toward', { angle });
    hand.react();
    const isPush = !(slip === 'no-push' && release === odd);
    if (isPush) hand.push(hand.aimed(asked));
    if (style.early) bench.markStick('toward', { angle });
    const touch = slip === 'bad-release' && release === odd ? polar(TOUCHED * FULL_TILT, asked) : null;
    letGo(bench, hand);
    settle(bench, hand, touch);
  }
  if (style.marks === 'guided') still(bench);
}

/** The guide marks a release at the reading that has come back by half. */
function letGo(bench: Bench, hand: Hand): void {
  const { stick } = bench;
  const furthest = sizeOf(stick.place);
  if (bench.unit.style.marks === 'guided') bench.leave(3, () => sizeOf(stick.place) <= furthest / 2);
  else bench.leave(hand.around(0.015));
  bench.markStick('release');
}

/** A thumb that is not quite off, or hands off; the guide marks half a second of it. */
function settle(bench: Bench, hand: Hand, touch: { readonly x: number; readonly y: number } | null): void {
  const wait = (seconds: number): void => {
    if (touch === null) bench.leave(seconds);
    else bench.play(seconds, (t) => plus(touch, hand.tremor(t)));
  };
  if (bench.unit.style.marks === 'prompted') {
    wait(1);
    return;
  }
  if (touch === null) bench.leave(4, () => bench.stick.toGo < STILL);
  wait(0.2);
  bench.markStick('dwell', { edge: 'begin' });
  wait(DWELL);
  bench.markStick('dwell', { edge: 'end' });
}

/** A longer untouched stretch, where the pad reports often enough for it. */
function still(bench: Bench): void {
  const { rateHz, onChange } = bench.unit.plan;
  if (onChange || rateHz < 120) return;
  bench.leave(0.3);
  bench.markStick('still', { edge: 'begin' });
  bench.leave(Math.min(10, 1050 / rateHz));
  bench.markStick('still', { edge: 'end' });
}
