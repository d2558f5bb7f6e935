/** `descriptor FILE | -`: what a report descriptor says, as reports and controls. */
import type { Control, Descriptor } from '../../../core/hid/control.ts';
import { describeDescriptor } from '../../../core/hid/describe.ts';
import { readDescriptor } from './descriptor-input.ts';
import type { InputForm } from '../../../core/hid/read-input.ts';
import { outputHead } from './output.ts';
import { drawTable } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export async function showDescriptor(terminal: Terminal, file: string, form: InputForm): Promise<ExitCode> {
  const descriptor = await readDescriptor(file, form);
  if (!descriptor.ok) return sayProblem(terminal, descriptor.problem);
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('descriptor'), ...describeDescriptor(descriptor.value) })
      : asText(descriptor.value),
  );
  return EXIT.done;
}

function asText({ reports, controls }: Descriptor): string {
  const reportRows = reports.map((report) => [report.type, report.reportId, report.byteLength]);
  const controlRows = controls
    .filter((control) => !control.constant)
    .map((control) => [
      control.type,
      control.reportId,
      usageText(control),
      control.bitOffset,
      control.bitSize,
      `${control.logicalMinimum} … ${control.logicalMaximum}`,
      [control.hasNull ? 'null state' : '', control.array ? 'array' : '', control.relative ? 'relative' : '']
        .filter((word) => word !== '')
        .join(', '),
    ]);
  return [
    drawTable([{ head: 'report' }, { head: 'id', align: 'right' }, { head: 'bytes', align: 'right' }], reportRows),
    '',
    drawTable(
      [
        { head: 'control' },
        { head: 'id', align: 'right' },
        { head: 'usage' },
        { head: 'bit', align: 'right' },
        { head: 'bits', align: 'right' },
        { head: 'range', align: 'right' },
        { head: '' },
      ],
      controlRows,
    ),
  ].join('\n');
}

function usageText({ usagePage, usage, usageMinimum, usageMaximum }: Control): string {
  const page = hex(usagePage);
  return usage === null ? `${page}:${hex(usageMinimum)}–${hex(usageMaximum)}` : `${page}:${hex(usage)}`;
}

function hex(value: number | null): string {
  return value === null ? '–' : value.toString(16).toUpperCase().padStart(4, '0');
}
