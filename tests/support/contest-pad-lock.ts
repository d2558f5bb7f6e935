/** Takes or frees the lock of one pad for each line it is given, and says what came of it: run by a test, never imported. */
import { createInterface } from 'node:readline';
import { createPadLock } from '../../electron/store/pad-lock.ts';

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('give the folder');
const pad = { vendorId: 1, productId: 2, product: 'Some pad', serial: null, transport: 'usb' } as const;
const lock = createPadLock(folder);
let free: (() => Promise<void>) | null = null;
for await (const line of createInterface({ input: process.stdin })) {
  if (line === 'take') {
    const taken = await lock.take(pad, 'a', () => console.log('lost'));
    free = taken.ok ? taken.value : null;
    console.log(taken.ok ? 'taken' : taken.problem.code);
  } else {
    await free?.();
    console.log('freed');
  }
}
