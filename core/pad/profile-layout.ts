/** The layout that a profile states. */
import type { Control, Descriptor } from '../hid/control.ts';
import { desktop, pages } from '../hid/usage-names.ts';
import type { FieldSource, PadLayout } from './layout.ts';
import type { Profile, ProfileField } from './profile.ts';
import { STICKS, type AxisField, type StickFields, type StickId } from './stick.ts';

/** A field of a report by its bits alone. */
type FieldRange = Omit<ProfileField, 'up'>;

/** The descriptor has the report that the profile reads, and long enough; an unknown descriptor is no objection. */
export function profileFits(profile: Profile, descriptor: Descriptor | null): boolean {
  if (descriptor === null) return true;
  const { reportId, byteLength } = profile.report;
  return descriptor.reports.some(
    (report) => report.type === 'input' && (report.reportId ?? 0) === reportId && report.byteLength >= byteLength,
  );
}

/** Everything in it comes from the profile; the descriptor is not asked. */
export function profileLayout(profile: Profile): PadLayout {
  const { reportId } = profile.report;
  const source = (field: FieldRange, usagePage: number, usage: number): FieldSource => ({
    reportId,
    control: controlOf(field, reportId, usagePage, usage),
  });
  const sticks: Partial<Record<StickId, StickFields>> = {};
  const stickSources: Partial<Record<StickId, { x: FieldSource; y: FieldSource }>> = {};
  const triggers: Partial<Record<StickId, FieldSource>> = {};
  for (const stick of STICKS) {
    const fields = profile.sticks[stick];
    if (fields !== undefined) {
      const [x, y] = stick === 'left' ? [desktop.x, desktop.y] : [desktop.rx, desktop.ry];
      sticks[stick] = { x: axisOf(fields.x), y: axisOf(fields.y) };
      stickSources[stick] = {
        x: source(fields.x, pages.genericDesktop, x),
        y: source(fields.y, pages.genericDesktop, y),
      };
    }
    const trigger = profile.triggers[stick];
    if (trigger !== undefined)
      triggers[stick] = source(trigger, pages.genericDesktop, stick === 'left' ? desktop.z : desktop.rz);
  }
  return {
    profile: profile.id,
    domain: profile.domain,
    sticks,
    stickSources,
    triggers,
    hat: profile.hat === undefined ? null : source(profile.hat, pages.genericDesktop, desktop.hatSwitch),
    buttons: profile.buttons
      .toSorted((one, other) => one.usage - other.usage)
      .map(({ usage, bitOffset }) => ({
        usage,
        source: source({ bitOffset, bitSize: 1, minimum: 0, maximum: 1 }, pages.button, usage),
      })),
    clicks: profile.clicks,
    noSticks:
      profile.sticks.left === undefined
        ? 'The profile of this pad states no stick; there is nothing to measure.'
        : null,
  };
}

function axisOf({ minimum, maximum, up }: ProfileField): AxisField {
  return { minimum, maximum, up };
}

function controlOf(field: FieldRange, reportId: number, usagePage: number, usage: number): Control {
  return {
    type: 'input',
    reportId: reportId === 0 ? null : reportId,
    usagePage,
    usage,
    usageMinimum: null,
    usageMaximum: null,
    bitOffset: field.bitOffset,
    bitSize: field.bitSize,
    logicalMinimum: field.minimum,
    logicalMaximum: field.maximum,
    physicalMinimum: 0,
    physicalMaximum: 0,
    unit: 0,
    unitExponent: 0,
    signed: field.minimum < 0,
    hasNull: false,
    relative: false,
    array: false,
    constant: false,
    aliases: [],
    choices: [],
    application: null,
    collection: null,
  };
}
