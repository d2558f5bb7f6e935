/** Reads the kernel's text of its parse (debugfs `rdesc`) into fields, to be held against the project's own parse. */

export interface KernelField {
  readonly type: 'input' | 'output' | 'feature';
  readonly reportId: number;
  readonly offset: number;
  readonly size: number;
  readonly count: number;
  readonly logicalMinimum: number;
  readonly logicalMaximum: number;
  readonly variable: boolean;
  /** One entry a usage; null where the kernel prints a name that this reader does not know. */
  readonly usages: readonly (number | null)[];
}

/** Names the kernel prints for usages of the generic desktop page (HID Usage Tables). */
const DESKTOP: Readonly<Record<string, number>> = {
  X: 0x30,
  Y: 0x31,
  Z: 0x32,
  Rx: 0x33,
  Ry: 0x34,
  Rz: 0x35,
  Slider: 0x36,
  Dial: 0x37,
  Wheel: 0x38,
  HatSwitch: 0x39,
};

interface Draft {
  type: 'input' | 'output' | 'feature';
  reportId: number;
  usages: (number | null)[];
  numbers: Record<string, number>;
  flags: string;
}

export function readKernelFields(text: string): KernelField[] {
  const fields: Draft[] = [];
  let type: Draft['type'] = 'input';
  let reportId = 0;
  let inUsages = false;
  for (const line of text.split('\n')) {
    const report = /^\s{2}(INPUT|OUTPUT|FEATURE)(?:\((\d+)\))?\[/.exec(line);
    if (report !== null) {
      type = (report[1] ?? '').toLowerCase() as Draft['type'];
      reportId = Number(report[2] ?? 0);
    } else if (/^\s{4}Field\(/.test(line)) {
      fields.push({ type, reportId, usages: [], numbers: {}, flags: '' });
      inUsages = false;
    } else if (/^\s{6}Usage\(\d+\)/.test(line)) inUsages = true;
    else if (inUsages && /^\s{8}\S/.test(line)) fields.at(-1)?.usages.push(readUsage(line.trim()));
    else {
      inUsages = false;
      const flags = /^\s{6}Flags\((.*)\)/.exec(line);
      const number = /^\s{6}([A-Za-z ]+)\((-?\d+)\)/.exec(line);
      const field = fields.at(-1);
      if (field !== undefined && flags !== null) field.flags = flags[1] ?? '';
      else if (field !== undefined && number !== null) field.numbers[number[1] ?? ''] = Number(number[2]);
    }
  }
  return fields.map((field) => ({
    type: field.type,
    reportId: field.reportId,
    offset: field.numbers['Report Offset'] ?? Number.NaN,
    size: field.numbers['Report Size'] ?? Number.NaN,
    count: field.numbers['Report Count'] ?? Number.NaN,
    logicalMinimum: field.numbers['Logical Minimum'] ?? Number.NaN,
    logicalMaximum: field.numbers['Logical Maximum'] ?? Number.NaN,
    variable: field.flags.includes('Variable'),
    usages: field.usages,
  }));
}

/** `GenericDesktop.X`, `Button.0001` (hexadecimal) or `ff00.0020`; anything else by name is left undecided. */
function readUsage(name: string): number | null {
  const [page = '', usage = ''] = name.split('.');
  if (page === 'GenericDesktop' && DESKTOP[usage] !== undefined) return 0x10000 + DESKTOP[usage];
  if (!/^[0-9a-f]{4}$/.test(usage)) return null;
  if (page === 'Button') return 0x90000 + Number.parseInt(usage, 16);
  return /^[0-9a-f]{4}$/.test(page) ? Number.parseInt(page, 16) * 0x10000 + Number.parseInt(usage, 16) : null;
}
