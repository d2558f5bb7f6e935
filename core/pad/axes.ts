/** The analog axes of one report, as a stick, a trigger or a pedal could be made of them. */
import type { Control } from '../hid/control.ts';
import { desktop, hasUsage, pages, simulation } from '../hid/usage-names.ts';

/** Fewer codes than this make switches, not an analog axis: some direction pads report −1, 0, 1 as X and Y. */
const LEAST_CODES = 16;

export interface Axis {
  readonly control: Control;
  /** Place among all analog axes of the report, in order of their bits. */
  readonly order: number;
}

/** What the application collection says the device is; `other` where it says nothing that a pad would. */
export type DeviceKind = 'gamePad' | 'joystick' | 'other';

export interface ReportAxes {
  readonly kind: DeviceKind;
  readonly axes: readonly Axis[];
  /** Every control of the report that is not constant. */
  readonly controls: readonly Control[];
}

const STICK_USAGES = [desktop.x, desktop.y, desktop.z, desktop.rx, desktop.ry, desktop.rz] as const;

/** Axes that stand on flight sticks, throttles and wheels, and seldom on a gamepad. */
const VEHICLE_USAGES = [
  [pages.genericDesktop, desktop.slider],
  [pages.genericDesktop, desktop.dial],
  [pages.genericDesktop, desktop.wheel],
  [pages.simulation, simulation.rudder],
  [pages.simulation, simulation.throttle],
  [pages.simulation, simulation.clutch],
  [pages.simulation, simulation.steering],
] as const;

/** `controls` are the non-constant input controls of one report. */
export function findAxes(controls: readonly Control[]): ReportAxes {
  const fitting = controls.filter(isOfPad);
  const axes = fitting
    .filter(isAnalog)
    .toSorted((one, other) => one.bitOffset - other.bitOffset)
    .map((control, order) => ({ control, order }));
  return { kind: kindOf(axes), axes, controls: fitting };
}

/** The axes with this usage, in order of their bits. */
export function axesOf(report: ReportAxes, usagePage: number, usage: number): readonly Axis[] {
  return report.axes.filter((axis) => hasUsage(axis.control, usagePage, usage));
}

export function hasStickAxis(report: ReportAxes): boolean {
  return STICK_USAGES.some((usage) => axesOf(report, pages.genericDesktop, usage).length > 0);
}

export function isOfVehicle(report: ReportAxes): boolean {
  return VEHICLE_USAGES.some(([page, usage]) => axesOf(report, page, usage).length > 0);
}

/** Equal size and sign, and a span that differs by an eighth at most: the two could belong to one stick. */
export function areAlike(one: Axis, other: Axis): boolean {
  const a = one.control;
  const b = other.control;
  const span = spanOf(a);
  return a.bitSize === b.bitSize && a.signed === b.signed && Math.abs(spanOf(b) - span) <= span / 8;
}

function isAnalog(control: Control): boolean {
  return !control.array && !control.relative && spanOf(control) >= LEAST_CODES - 1;
}

function spanOf(control: Control): number {
  return control.logicalMaximum - control.logicalMinimum;
}

/** Mice, keyboards, tablets and remote controls have axes too, but no sticks. */
function isOfPad({ application }: Control): boolean {
  if (application === null) return true;
  const { usagePage, usage } = application;
  if (usagePage === pages.genericDesktop)
    return usage === desktop.gamePad || usage === desktop.joystick || usage === desktop.multiAxis;
  return usagePage === pages.simulation || usagePage === pages.game || usagePage >= 0xff00;
}

function kindOf(axes: readonly Axis[]): DeviceKind {
  const application = axes[0]?.control.application;
  if (application?.usagePage !== pages.genericDesktop) return 'other';
  if (application.usage === desktop.gamePad) return 'gamePad';
  return application.usage === desktop.joystick ? 'joystick' : 'other';
}
