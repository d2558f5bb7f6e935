/**
 * Decodes one 64-byte report (id and 63 bytes) again and again: with a plan made from its descriptor, and with a decoder
 * written by hand for the same fields. Prints both rates and their ratio, the median of several rounds of one run.
 * Run: `node tests/perf/decode.ts`.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { decodeInto } from '../../core/hid/decode.ts';
import { parseDescriptor } from '../../core/hid/descriptor.ts';
import { readHex } from '../../core/hid/hex.ts';
import { planReports, type ReportPlan } from '../../core/hid/plan.ts';

const ROUNDS = 21;
const REPORTS_A_ROUND = 200_000;
const KINDS = 64;

/** Four 8-bit axes, a 4-bit hat with a null state, 14 buttons, a 6-bit counter, two triggers, 54 bytes. */
function loadPlan(): ReportPlan {
  const file = path.join(import.meta.dirname, '../golden/descriptors/pad-e.json');
  const golden = JSON.parse(readFileSync(file, 'utf8')) as { descriptorHex: string };
  const bytes = readHex(golden.descriptorHex);
  const descriptor = bytes.ok ? parseDescriptor(bytes.value) : bytes;
  const plan = descriptor.ok ? planReports(descriptor.value).get(1) : undefined;
  if (plan === undefined) throw new Error('The golden descriptor has no report 1.');
  return plan;
}

function decodeByHand(view: DataView, values: Float64Array): void {
  values[0] = view.getUint8(0);
  values[1] = view.getUint8(1);
  values[2] = view.getUint8(2);
  values[3] = view.getUint8(3);
  const switches = view.getUint32(4, true);
  const hat = switches & 15;
  values[4] = hat > 7 ? Number.NaN : hat;
  for (let button = 0; button < 14; button += 1) values[5 + button] = (switches >>> (4 + button)) & 1;
  values[19] = (switches >>> 18) & 63;
  values[20] = view.getUint8(7);
  values[21] = view.getUint8(8);
  for (let index = 0; index < 54; index += 1) values[22 + index] = view.getUint8(9 + index);
}

function makePayloads(): Uint8Array[] {
  return Array.from({ length: KINDS }, (_, kind) =>
    Uint8Array.from({ length: 63 }, (_unused, at) => (at * 37 + kind * 11) & 0xff),
  );
}

/** Milliseconds of the processor, so that what else runs on the machine counts little. */
function timeOf(decode: (index: number) => void): number {
  const from = process.cpuUsage();
  for (let index = 0; index < REPORTS_A_ROUND; index += 1) decode(index % KINDS);
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function medianOf(numbers: readonly number[]): number {
  return numbers.toSorted((one, other) => one - other)[numbers.length >> 1] ?? Number.NaN;
}

function main(): void {
  const plan = loadPlan();
  const payloads = makePayloads();
  const views = payloads.map((payload) => new DataView(payload.buffer));
  const planned = new Float64Array(plan.controls.length);
  const byHand = new Float64Array(plan.controls.length);
  for (const [index, payload] of payloads.entries()) {
    decodeInto(plan, payload, planned);
    decodeByHand(views[index] as DataView, byHand);
    if (planned.some((value, at) => !Object.is(value, byHand[at]))) throw new Error('The two decoders disagree.');
  }
  const rounds = Array.from({ length: ROUNDS }, () => ({
    plan: timeOf((index) => void decodeInto(plan, payloads[index] as Uint8Array, planned)),
    hand: timeOf((index) => decodeByHand(views[index] as DataView, byHand)),
  })).slice(ROUNDS >> 2);
  const byPlan = medianOf(rounds.map((round) => round.plan));
  const hand = medianOf(rounds.map((round) => round.hand));
  const ratio = medianOf(rounds.map((round) => round.plan / round.hand));
  const rate = (millis: number): number => (REPORTS_A_ROUND / millis) * 1000;
  console.log(
    JSON.stringify({
      figure: 'decode of a 64-byte report, one core',
      fields: plan.controls.length,
      node: process.version,
      reportsPerSecond: rate(byPlan),
      byHandPerSecond: rate(hand),
      timesAsLongAsByHand: ratio,
    }),
  );
}

main();
