/** The kernel's input layer (evdev) as an independent judge of the project's decoding of reports. */
import { spawnSync } from 'node:child_process';
import { createReadStream } from 'node:fs';
import type { Control } from '../../../core/hid/control.ts';
import { decodeInto } from '../../../core/hid/decode.ts';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { encodeField } from '../../support/encode-report.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { planReports, type ReportPlan } from '../../../core/hid/plan.ts';
import { createRandom, type Random } from '../../../core/numeric/random.ts';
import { BENCH_DESCRIPTOR } from './bench-pad.ts';
import { check, sleep, until } from './checks.ts';
import { goldenDescriptors } from './kernel-judge.ts';
import { eventNodes, type RigPad } from './rig-pad.ts';

/** linux/input-event-codes.h. */
const EVENT_BYTES = 24;
const TYPE = { key: 1, absolute: 3 };
const GAME_PAD_BUTTONS = 0x130;
const JOYSTICK_BUTTONS = 0x120;
const HAT_X = 16;
/** Eight ways clockwise from up, as x and y with y downwards. */
const HAT_WAYS = [
  [0, -1],
  [1, -1],
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
];

export async function judgeReports(pad: RigPad, samples: number): Promise<void> {
  const golden = goldenDescriptors().filter(({ id }) =>
    ['pad-a', 'pad-b', 'pad-e', 'joystick-c', 'rc-b', 'wheel-d'].includes(id),
  );
  for (const { id, descriptorHex } of [{ id: 'the bench pad', descriptorHex: BENCH_DESCRIPTOR }, ...golden]) {
    await judge(pad, id, descriptorHex, samples);
  }
}

async function judge(pad: RigPad, id: string, descriptorHex: string, samples: number): Promise<void> {
  const name = `decoding of ${id} agrees with the kernel's input layer`;
  const bytes = readHex(descriptorHex);
  const parsed = bytes.ok ? parseDescriptor(bytes.value) : bytes;
  const node = await pad.plug(descriptorHex);
  const events = node === undefined ? [] : ((await until(() => nonEmpty(eventNodes(node)))) ?? []);
  const [eventNode] = events;
  if (!parsed.ok || eventNode === undefined || events.length !== 1) {
    check(name, false, { parsed: parsed.ok, events });
    return;
  }
  const plan = [...planReports(parsed.value).values()][0];
  // Small steps are swallowed by the kernel's fuzz until it is set to 0.
  spawnSync('/bin/vmtool', ['absraw', eventNode]);
  const state = followEvents(eventNode);
  const random = createRandom(20261125);
  await sleep(50);
  let compared = 0;
  const wrong: unknown[] = [];
  for (let sample = 0; plan !== undefined && sample < samples; sample += 1) {
    const payload = randomReport(plan, random);
    const withId = parsed.value.hasReportIds
      ? Buffer.concat([Buffer.from([plan.reportId]), payload])
      : Buffer.from(payload);
    await pad.order({ op: 'send', hex: withId.toString('hex') });
    const expected = expectedState(plan, payload);
    // A report that changes many controls is cut into several packets: wait for the state, not for the first packet.
    await until(() => (expected.every(([key, value]) => (state.get(key) ?? 0) === value) ? true : undefined), 400);
    compared += expected.length;
    // The first report moves everything once: the kernel tells changes only.
    if (sample > 0)
      wrong.push(
        ...expected.filter(([key, value]) => (state.get(key) ?? 0) !== value).map((pair) => ({ sample, pair })),
      );
  }
  check(name, compared > 0 && wrong.length === 0, {
    reports: samples,
    compared,
    ...(wrong.length > 0 ? { wrong: wrong.slice(0, 5) } : {}),
  });
  await pad.unplug();
}

function nonEmpty(list: string[]): string[] | undefined {
  return list.length > 0 ? list : undefined;
}

/** Keeps the latest value of each event type and code. */
function followEvents(eventNode: string): Map<string, number> {
  const state = new Map<string, number>();
  let carry = Buffer.alloc(0);
  const stream = createReadStream(eventNode, { highWaterMark: EVENT_BYTES * 64 });
  // The pending read ends with an error when the pad goes.
  stream.on('error', () => stream.destroy());
  stream.on('data', (chunk) => {
    const bytes = Buffer.concat([carry, chunk as Buffer]);
    let at = 0;
    for (; at + EVENT_BYTES <= bytes.length; at += EVENT_BYTES) {
      state.set(`${bytes.readUInt16LE(at + 16)}.${bytes.readUInt16LE(at + 18)}`, bytes.readInt32LE(at + 20));
    }
    carry = bytes.subarray(at);
  });
  return state;
}

/** Axes anywhere in their logical range; hats and buttons too; everything else stays 0. */
function randomReport(plan: ReportPlan, random: Random): Uint8Array {
  const payload = new Uint8Array(plan.byteLength);
  for (const control of plan.controls) {
    if (control.array || !isJudged(control)) continue;
    const values = control.logicalMaximum - control.logicalMinimum + 1;
    encodeField(payload, control, control.logicalMinimum + Math.floor(random.next() * values));
  }
  return payload;
}

function isJudged(control: Control): boolean {
  if (control.usagePage === 9) return (control.usage ?? 0) >= 1 && (control.usage ?? 0) <= 14;
  return (
    control.usagePage === 1 &&
    ((control.usage ?? 0) === 0x39 || ((control.usage ?? 0) >= 0x30 && (control.usage ?? 0) <= 0x35))
  );
}

/** What evdev must show, from the project's own decoding. */
function expectedState(plan: ReportPlan, payload: Uint8Array): [string, number][] {
  const values = new Float64Array(plan.controls.length);
  const problem = decodeInto(plan, payload, values);
  if (problem !== null) return [[`problem ${problem.code}`, 1]];
  return plan.controls.flatMap((control, index): [string, number][] => {
    const value = values[index] ?? Number.NaN;
    const usage = control.usage ?? 0;
    if (!isJudged(control)) return [];
    if (control.usagePage === 9) {
      const base = control.application?.usage === 5 ? GAME_PAD_BUTTONS : JOYSTICK_BUTTONS;
      return [[`${TYPE.key}.${base + usage - 1}`, value]];
    }
    if (usage === 0x39) {
      const [x = 0, y = 0] = HAT_WAYS[value - control.logicalMinimum] ?? [0, 0];
      return [
        [`${TYPE.absolute}.${HAT_X}`, x],
        [`${TYPE.absolute}.${HAT_X + 1}`, y],
      ];
    }
    return [[`${TYPE.absolute}.${usage - 0x30}`, value]];
  });
}
