/** A survey of the left stick by the second hand, with the marks that a recorder writes, into any log. */
import { sweepsNeeded } from '../../../core/capture/guide/sweeps-needed.ts';
import type { LogVisitor } from '../../../core/log/visitor.ts';
import { Bench } from './bench.ts';
import { Chance } from './chance.ts';
import { fieldRange } from './descriptor.ts';
import { Hand } from './hand.ts';
import { headerOf } from './header.ts';
import { pressInputs } from './press-inputs.ts';
import { takeReleases } from './releases.ts';
import { Turns } from './turns.ts';
import type { Unit } from './unit.ts';

const HELD_BUTTON = 3;

export function takeSurvey(unit: Unit, log: LogVisitor): void {
  log.header(headerOf(unit));
  const { style, slip, plan, stored } = unit;
  const bench = new Bench(unit, log);
  const chance = new Chance(unit.seed, 'hand');
  const hand = new Hand(bench, style, chance);
  if (plan.domain === 'sensor') bench.mark('layers', { layers: { user: null, factory: stored } });
  bench.leave(0.5);
  if (slip === 'button-held') bench.pad.buttons.add(HELD_BUTTON);
  const capture = (purpose: string, act: () => void, stick: 'left' | null = 'left'): void => {
    bench.mark('capture', { purpose, edge: 'begin', stick });
    act();
    bench.mark('capture', { purpose, edge: 'end', stick });
    bench.leave(0.2);
  };
  capture('rest', () => takeReleases(bench, hand, chance, slip));
  capture('rim', () => {
    if (slip === 'wrong-stick') bench.moves = 'right';
    const turns = new Turns(bench, hand, style, chance);
    for (const way of [-1, 1] as const) {
      hand.react();
      turns.oneWay(slip === 'one-way-turns' ? -1 : way, slip);
    }
    bench.moves = 'left';
  });
  capture('travel', () => {
    const range = fieldRange(plan);
    const field = { minimum: range.least, maximum: range.greatest, up: 1 } as const;
    takeSweeps(bench, hand, sweepsNeeded({ x: field, y: field }, plan.rateHz));
  });
  capture('flick', () => {
    for (const degrees of [0, 180, 90, 270]) {
      if (style.marks === 'prompted') bench.markStick('toward', { angle: degrees });
      hand.react();
      hand.push(hand.aimed(degrees));
      bench.leave(0.015);
      bench.markStick('release');
      bench.leave(hand.around(0.9));
    }
  });
  bench.pad.buttons.clear();
  capture('inputs', () => pressInputs(bench, hand, chance), null);
  bench.leave(0.3);
}

function takeSweeps(bench: Bench, hand: Hand, sweeps: number): void {
  const { style } = bench.unit;
  const order = style.marks === 'guided' ? [0, 90, 180, 270] : [0, 180, 90, 270];
  for (const degrees of Array.from({ length: sweeps }, () => order).flat()) {
    const isThere = style.marks === 'guided' || style.early;
    if (!isThere) bench.markStick('toward', { angle: degrees });
    hand.react();
    const from = hand.push(hand.aimed(degrees + 180), hand.around(0.4));
    if (isThere) bench.markStick('toward', { angle: degrees });
    hand.sweep(from, hand.around(style.sweepSeconds));
    bench.leave(hand.around(0.4));
  }
}
