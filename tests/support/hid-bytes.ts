/** Descriptors and reports as tests write them: hex with blanks. */
import type { Control, Descriptor } from '../../core/hid/control.ts';
import { parseDescriptor } from '../../core/hid/descriptor.ts';
import { readHex } from '../../core/hid/hex.ts';
import type { Problem } from '../../core/result.ts';

export function hexBytes(...parts: readonly string[]): Uint8Array {
  const bytes = readHex(parts.join(' '));
  if (!bytes.ok) throw new Error(bytes.problem.says);
  return bytes.value;
}

/** The parsed descriptor; a problem fails the test. */
export function parsed(...parts: readonly string[]): Descriptor {
  const descriptor = parseDescriptor(hexBytes(...parts));
  if (!descriptor.ok) throw new Error(descriptor.problem.says);
  return descriptor.value;
}

/** The problem that the descriptor is refused with; a descriptor that parses fails the test. */
export function refused(...parts: readonly string[]): Problem {
  const descriptor = parseDescriptor(hexBytes(...parts));
  if (descriptor.ok) throw new Error('The descriptor parses.');
  return descriptor.problem;
}

/** The controls of input reports that are not padding. */
export function inputs(...parts: readonly string[]): readonly Control[] {
  return parsed(...parts).controls.filter((control) => control.type === 'input' && !control.constant);
}
