/** What must hold for any bytes given as a report descriptor, and for any report under what comes of them. */
import type { Descriptor } from '../../core/hid/control.ts';
import { createReportDescriber } from '../../core/hid/describe-report.ts';
import { parseDescriptor } from '../../core/hid/descriptor.ts';
import { decodeInto } from '../../core/hid/decode.ts';
import { limits } from '../../core/hid/limits.ts';
import { planReports } from '../../core/hid/plan.ts';
import type { Random } from '../../core/numeric/random.ts';
import { createReadingDecoder } from '../../core/pad/decode-reading.ts';
import { findLayout } from '../../core/pad/find-layout.ts';
import { createReadingSlot } from '../../core/pad/reading-slot.ts';
import { pick } from './mutate-descriptor.ts';

/** `parsed` or the code of the problem; throws where a promise of the parser, the decoder or the layout is broken. */
export function checkDescriptor(bytes: Uint8Array, random: Random): string {
  const result = parseDescriptor(bytes);
  if (!result.ok) {
    const { code, says, at } = result.problem;
    if (at === undefined || at < 0 || at > bytes.length) throw new Error(`${code} has no place in the descriptor`);
    if (!says.endsWith('.')) throw new Error(`${code} is no sentence`);
    return code;
  }
  checkControls(result.value);
  checkReports(result.value, random);
  return 'parsed';
}

function checkControls({ reports, controls }: Descriptor): void {
  if (controls.length > limits.controls) throw new Error('more controls than the limit');
  const lengths = new Map(reports.map((report) => [`${report.type} ${String(report.reportId)}`, report.byteLength]));
  const ends = new Map<string, number>();
  for (const control of controls) {
    const report = `${control.type} ${String(control.reportId)}`;
    const from = ends.get(report) ?? 0;
    if (control.bitSize < 1 || control.bitOffset < from) throw new Error('controls overlap or have no bits');
    ends.set(report, control.bitOffset + control.bitSize);
    if (control.bitOffset + control.bitSize > (lengths.get(report) ?? 0) * 8)
      throw new Error('a control leaves its report');
    if (control.logicalMaximum < control.logicalMinimum) throw new Error('a range is reversed');
  }
}

function checkReports(descriptor: Descriptor, random: Random): void {
  const describer = createReportDescriber(descriptor);
  const decoder = createReadingDecoder(findLayout(descriptor, null));
  const slot = createReadingSlot();
  for (const plan of planReports(descriptor).values()) {
    const payload = Uint8Array.from({ length: plan.byteLength }, () => pick(random, 256));
    const values = new Float64Array(plan.controls.length).fill(Number.POSITIVE_INFINITY);
    if (decodeInto(plan, payload, values) !== null) throw new Error('a whole report is refused');
    if (values.includes(Number.POSITIVE_INFINITY)) throw new Error('a control has no value');
    const read = decoder.read(plan.reportId, payload, slot);
    if (read !== 'reading' && read !== 'other') throw new Error(`a whole report gives ${read.code}`);
    if (plan.byteLength > 0) {
      const short = payload.subarray(0, pick(random, plan.byteLength));
      if (decodeInto(plan, short, values)?.code !== 'report-too-short') throw new Error('a short report is decoded');
      decoder.read(plan.reportId, short, slot);
    }
    const whole = descriptor.hasReportIds ? Uint8Array.of(plan.reportId, ...payload) : payload;
    if (whole.length > 0 && !describer.describe(whole).ok) throw new Error('a whole report is not described');
  }
}
