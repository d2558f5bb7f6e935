/** A report descriptor as a user has it: hex text or bytes, told apart or forced. */
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import type { Descriptor } from '../../../core/hid/control.ts';
import { readHex } from '../../../core/hid/hex.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readInput } from './input-files.ts';

export type ByteForm = 'hex' | 'bytes' | 'either';

export async function readDescriptor(name: string, form: ByteForm): Promise<Result<Descriptor>> {
  const read = await readInput(name);
  if (!read.ok) return read;
  const bytes = descriptorBytes(read.value, form);
  if (!bytes.ok) return bytes;
  return parseDescriptor(bytes.value);
}

/** Hex text is told by holding nothing but hex digits and blanks: a descriptor's own bytes never do. */
export function descriptorBytes(read: Uint8Array, form: ByteForm): Result<Uint8Array> {
  if (read.length === 0) return failed('descriptor-empty', 'The descriptor is empty; give its bytes or their hex.');
  const text = new TextDecoder('latin1').decode(read);
  if (form === 'bytes' || (form === 'either' && !/^[\s0-9a-f]*$/iu.test(text))) return done(read);
  return readHex(text);
}
