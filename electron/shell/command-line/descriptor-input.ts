/** A report descriptor as a user has it: hex text or bytes, told apart or forced. */
import type { Descriptor } from '../../../core/hid/control.ts';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { readInput as readHexOrBytes, type InputForm } from '../../../core/hid/read-input.ts';
import type { Result } from '../../../core/result.ts';
import { readInput } from './input-files.ts';

export async function readDescriptor(name: string, form: InputForm): Promise<Result<Descriptor>> {
  const read = await readInput(name);
  if (!read.ok) return read;
  const bytes = readHexOrBytes(read.value, form);
  return bytes.ok ? parseDescriptor(bytes.value) : bytes;
}
