/** The kernel's own HID parser as an independent judge of the project's parse of each descriptor. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Control } from '../../../core/hid/control.ts';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { check } from './checks.ts';
import { readKernelFields, type KernelField } from './kernel-fields.ts';
import { kernelParseText, type RigPad } from './rig-pad.ts';

interface Golden {
  readonly id: string;
  readonly descriptorHex: string;
}

export function goldenDescriptors(): Golden[] {
  const folder = path.join(import.meta.dirname, 'descriptors');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .toSorted()
    .map((name) => JSON.parse(readFileSync(path.join(folder, name), 'utf8')) as Partial<Golden>)
    .filter((golden): golden is Golden => golden.id !== undefined && golden.descriptorHex !== undefined);
}

export async function judgeDescriptors(pad: RigPad): Promise<void> {
  for (const { id, descriptorHex } of goldenDescriptors()) {
    const node = await pad.plug(descriptorHex);
    if (node === undefined) {
      check(`the kernel makes a node of ${id}`, false);
      continue;
    }
    const ioctl = spawnSync('/bin/vmtool', ['rdesc', node], { encoding: 'utf8' }).stdout.trim();
    check(`descriptor of ${id} as asked by ioctl equals what the pad gave`, ioctl === descriptorHex);
    compare(id, descriptorHex, readKernelFields(kernelParseText(node)));
    await pad.unplug();
  }
}

function compare(id: string, descriptorHex: string, fields: readonly KernelField[]): void {
  const bytes = readHex(descriptorHex);
  const parsed = bytes.ok ? parseDescriptor(bytes.value) : bytes;
  if (!parsed.ok) {
    check(`parse of ${id} agrees with the kernel's`, false, { problem: parsed.problem });
    return;
  }
  // The kernel drops elements without a usage (padding).
  const ours = parsed.value.controls.filter((control) => control.usage !== null || control.array);
  const missing: unknown[] = [];
  let slots = 0;
  for (const field of fields) {
    for (let index = 0; index < field.count; index += 1) {
      slots += 1;
      if (!ours.some((control) => agrees(control, field, index)))
        missing.push({ ...field, usages: field.usages[index], index });
    }
  }
  check(
    `parse of ${id} agrees with the kernel's in every field`,
    missing.length === 0 && slots === ours.length && slots > 0,
    {
      kernel: slots,
      ours: ours.length,
      ...(missing.length > 0 ? { missing: missing.slice(0, 3) } : {}),
    },
  );
}

function agrees(control: Control, field: KernelField, index: number): boolean {
  return (
    control.type === field.type &&
    (control.reportId ?? 0) === field.reportId &&
    control.bitOffset === field.offset + index * field.size &&
    control.bitSize === field.size &&
    control.logicalMinimum === field.logicalMinimum &&
    control.logicalMaximum === field.logicalMaximum &&
    (control.constant || control.array === !field.variable) &&
    usagesAgree(control, field, index)
  );
}

function usagesAgree(control: Control, field: KernelField, index: number): boolean {
  if (control.array) {
    return field.usages.every((usage, choice) => {
      const own = control.choices[choice];
      return usage === null || own === undefined || own.usagePage * 0x10000 + own.usage === usage;
    });
  }
  const usage = field.usages[index];
  return usage === null || usage === undefined || (control.usagePage ?? 0) * 0x10000 + (control.usage ?? 0) === usage;
}
