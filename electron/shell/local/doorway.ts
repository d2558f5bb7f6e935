/**
 * The way from the system's opener into the app: a page in a file that this account alone can read, which leads on to the
 * address. The address itself would stand in the process list, where every account of the machine could read it.
 */
import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { TICKET_MILLIS } from './entrance.ts';

const IS_DOOR = /^enter-[0-9a-f]{32}\.html$/u;

/** The address of a file that leads to `newAddress`'s; the file is gone when the ticket is. Throws the file system's errors. */
export function makeDoor(folder: string, newAddress: (gone: () => void) => string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  // One that was there already may be open to others.
  chmodSync(folder, 0o700);
  sweep(folder);
  const file = path.join(folder, `enter-${randomBytes(16).toString('hex')}.html`);
  const address = newAddress(() => rmSync(file, { force: true }));
  writeFileSync(file, pageTo(address), { mode: 0o600, flag: 'wx' });
  return pathToFileURL(file).href;
}

/** What a program that was killed left behind: older than any ticket, or of a time to come. */
function sweep(folder: string): void {
  for (const name of readdirSync(folder).filter((one) => IS_DOOR.test(one))) {
    const file = path.join(folder, name);
    const stat = statSync(file, { throwIfNoEntry: false });
    if (stat !== undefined && Math.abs(Date.now() - stat.mtimeMs) > TICKET_MILLIS) rmSync(file, { force: true });
  }
}

/** The address is made of digits and letters of base64url: nothing in it needs to be escaped. */
function pageTo(address: string): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="referrer" content="no-referrer">
<meta http-equiv="refresh" content="0; url=${address}">
<title>Stickwright</title>
<p><a href="${address}">Open Stickwright</a></p>
</html>
`;
}
