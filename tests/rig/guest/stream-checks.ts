/** Numbered reports at 125, 250 and 1,000 Hz through the product's transport and decoder: each one must arrive once, in order, whole. */
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { decodeInto } from '../../../core/hid/decode.ts';
import { planReports, type ReportPlan } from '../../../core/hid/plan.ts';
import { BENCH_DESCRIPTOR, benchValues } from './bench-pad.ts';
import { listed, transportOf } from './bench-ports.ts';
import { check, figure, sleep, until } from './checks.ts';
import type { RigPad } from './rig-pad.ts';

/** Index of each control in the plan of report 1: 4 axes, hat, 14 buttons, the number. */
const HAT_INDEX = 4;
const FIRST_BUTTON = 5;
const NUMBER_INDEX = 19;

interface Tally {
  readonly seen: Uint8Array;
  received: number;
  repeated: number;
  outOfOrder: number;
  wrong: number;
  last: number;
}

export async function checkStreams(
  pad: RigPad,
  rates: readonly number[],
  seconds: number,
  stallMillis = 0,
): Promise<void> {
  await pad.plug(BENCH_DESCRIPTOR);
  await streamOnce(pad, 250, 200, 0); // The first pass translates the hot path under emulation.
  for (const hz of rates) {
    const sent = Math.round(hz * seconds);
    const { tally, realHz } = await streamOnce(pad, hz, sent, stallMillis);
    const lost = tally.seen.reduce((sum, seen) => sum + (seen === 0 ? 1 : 0), 0);
    const name = `${sent} reports at ${hz} Hz arrive once, in order and whole${stallMillis > 0 ? ` though the program is held up for ${stallMillis} ms` : ''}`;
    const facts = {
      sent,
      received: tally.received,
      lost,
      repeated: tally.repeated,
      outOfOrder: tally.outOfOrder,
      wrong: tally.wrong,
      realHz,
    };
    check(name, tally.received === sent && lost + tally.repeated + tally.outOfOrder + tally.wrong === 0, facts);
    figure('stream', { hz, ...facts });
  }
  await pad.unplug();
}

async function streamOnce(
  pad: RigPad,
  hz: number,
  sent: number,
  stallMillis: number,
): Promise<{ tally: Tally; realHz: number }> {
  const tally: Tally = { seen: new Uint8Array(sent), received: 0, repeated: 0, outOfOrder: 0, wrong: 0, last: -1 };
  const [found] = await listed();
  const parsed = found?.descriptor == null ? null : parseDescriptor(found.descriptor);
  const plan = parsed?.ok === true ? planReports(parsed.value).get(1) : undefined;
  if (found === undefined || plan === undefined) return { tally, realHz: 0 };
  const transport = await transportOf(found);
  const values = new Float64Array(plan.controls.length);
  await transport.open({
    report: (_, reportId, payload) => {
      if (reportId === 1) count(tally, plan, payload, values);
    },
    gap: () => undefined,
    lost: () => undefined,
  });
  await sleep(80);
  await pad.order({ op: 'stream', hz, count: sent });
  if (stallMillis > 0) {
    await sleep(300);
    for (const end = performance.now() + stallMillis; performance.now() < end;);
  }
  const told = await pad.event('streamed', (sent / hz) * 4000 + 30_000);
  await until(() => (tally.received >= sent ? true : undefined), 2000);
  await transport.close();
  return { tally, realHz: Math.round((sent / Number(told?.['seconds'] ?? 0)) * 10) / 10 };
}

function count(tally: Tally, plan: ReportPlan, payload: Uint8Array, values: Float64Array): void {
  tally.received += 1;
  if (decodeInto(plan, payload, values) !== null) {
    tally.wrong += 1;
    return;
  }
  const number = values[NUMBER_INDEX] ?? -1;
  if (tally.seen[number] === 1) tally.repeated += 1;
  tally.seen[number] = 1;
  if (number < tally.last) tally.outOfOrder += 1;
  tally.last = Math.max(tally.last, number);
  if (!isReport(number, values)) tally.wrong += 1;
}

/** Every value of the report is the one that its number stands for. */
function isReport(number: number, values: Float64Array): boolean {
  const { axes, hat, buttons } = benchValues(number);
  const hatValue = values[HAT_INDEX] ?? Number.NaN;
  return (
    axes.every((axis, index) => values[index] === axis) &&
    (hat === 8 ? Number.isNaN(hatValue) : hatValue === hat) &&
    Array.from({ length: 14 }, (_, index) => values[FIRST_BUTTON + index] === ((buttons >> index) & 1)).every(Boolean)
  );
}
