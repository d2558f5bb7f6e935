/** Finds out how a pad's reports become readings. */
import type { Control, Descriptor } from '../hid/control.ts';
import { planReports, type ReportPlan } from '../hid/plan.ts';
import { findAxes, hasStickAxis } from './axes.ts';
import { findSticks, type AxisPair } from './find-sticks.ts';
import { findSwitches } from './find-switches.ts';
import { findTriggers } from './find-triggers.ts';
import type { FieldSource, PadLayout } from './layout.ts';
import type { Profile } from './profile.ts';
import { profileFits, profileLayout } from './profile-layout.ts';
import { STICKS, type StickFields, type StickId } from './stick.ts';

/**
 * A profile that fits the descriptor decides alone; otherwise the usages do, and counts are `reported`. Of several
 * input reports the one that carries most is read: most sticks, then triggers, hat and buttons. `arriving` limits the
 * search to reports that were really seen: a pad may describe axes in a report that it does not send.
 */
export function findLayout(
  descriptor: Descriptor | null,
  profile: Profile | null,
  arriving: ReadonlySet<number> | null = null,
): PadLayout {
  if (profile !== null && profileFits(profile, descriptor)) return profileLayout(profile);
  if (descriptor === null)
    return nothing(
      'The pad gives no report descriptor and no profile knows it, so its axes are not known; its raw reports can still be recorded.',
    );
  const plans = [...planReports(descriptor).values()].filter((plan) => arriving?.has(plan.reportId) ?? true);
  const [best] = plans.map(reportLayout).sort(byContent);
  if (best?.sticks.left !== undefined) return best;
  return { ...(best ?? nothing(null)), noSticks: sayWhy(descriptor, plans, arriving) };
}

function reportLayout(plan: ReportPlan): PadLayout {
  const report = findAxes(plan.controls);
  const pairs = findSticks(report);
  const triggers = findTriggers(report, pairs);
  const source = (control: Control): FieldSource => ({ reportId: plan.reportId, control });
  const sticks: Partial<Record<StickId, StickFields>> = {};
  const stickSources: Partial<Record<StickId, { x: FieldSource; y: FieldSource }>> = {};
  for (const stick of STICKS) {
    const pair = pairs[stick];
    if (pair === undefined) continue;
    sticks[stick] = fieldsOf(pair);
    stickSources[stick] = { x: source(pair.x.control), y: source(pair.y.control) };
  }
  return {
    profile: null,
    domain: 'reported',
    sticks,
    stickSources,
    triggers: {
      ...(triggers.left === undefined ? {} : { left: source(triggers.left) }),
      ...(triggers.right === undefined ? {} : { right: source(triggers.right) }),
    },
    ...findSwitches(plan.reportId, report.controls),
    clicks: {},
    noSticks: null,
  };
}

/** In HID a count of y grows downwards. */
function fieldsOf({ x, y }: AxisPair): StickFields {
  return {
    x: { minimum: x.control.logicalMinimum, maximum: x.control.logicalMaximum, up: 1 },
    y: { minimum: y.control.logicalMinimum, maximum: y.control.logicalMaximum, up: -1 },
  };
}

function byContent(one: PadLayout, other: PadLayout): number {
  const [a, b] = [contentOf(one), contentOf(other)];
  return b.map((amount, index) => amount - (a[index] ?? 0)).find((difference) => difference !== 0) ?? 0;
}

function contentOf(layout: PadLayout): readonly number[] {
  const hat = layout.hat !== null || layout.dPad !== undefined;
  return [Object.keys(layout.sticks).length, Object.keys(layout.triggers).length, Number(hat), layout.buttons.length];
}

function sayWhy(descriptor: Descriptor, plans: readonly ReportPlan[], arriving: ReadonlySet<number> | null): string {
  if (plans.some((plan) => hasStickAxis(findAxes(plan.controls))))
    return 'The report descriptor names analog axes, but no two that make a stick, as on a wheel or a throttle; a profile of this device is needed.';
  const elsewhere = arriving !== null && findLayout(descriptor, null).noSticks === null;
  if (elsewhere)
    return `No axes are known: the pad sends ${sayReports(arriving)}, and its report descriptor names analog axes only in others; a profile of this pad is needed.`;
  return 'No axes are known: the report descriptor names no analog axes of a gamepad or joystick; a profile of this pad is needed.';
}

function sayReports(ids: ReadonlySet<number>): string {
  const known = [...ids].sort((one, other) => one - other);
  return known.length === 1 ? `report ${known.join()}` : `reports ${known.join(', ')}`;
}

function nothing(noSticks: string | null): PadLayout {
  return {
    profile: null,
    domain: 'reported',
    sticks: {},
    stickSources: {},
    triggers: {},
    hat: null,
    buttons: [],
    clicks: {},
    noSticks,
  };
}
