/** Takes the lock of a pad in the folder given, says so on standard output and holds it: run by a test, never imported. */
import { createPadLock } from '../../electron/store/pad-lock.ts';

const [folder, lockKey] = process.argv.slice(2);
if (folder === undefined || lockKey === undefined) throw new Error('give the folder and the key');
const pad = { vendorId: 1, productId: 2, product: 'Some pad', serial: null, transport: 'usb' } as const;
const taken = await createPadLock(folder).take(pad, lockKey, () => console.log('lost'));
console.log(taken.ok ? 'taken' : taken.problem.says);
setInterval(() => undefined, 60_000);
