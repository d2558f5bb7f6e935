/** Opens the address of a file in the browser that the desktop is set to; a machine without one is not an error. */
import { spawn } from 'node:child_process';

/** False when there is nothing to open it with. Other accounts of the machine can read the address: it must tell nothing. */
export function openBrowser(address: string, platform: NodeJS.Platform = process.platform): Promise<boolean> {
  const [command, args] = openerOf(platform, address);
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      stdio: 'ignore',
      detached: true,
      // What stands in quotes below must reach `start` as it stands.
      windowsVerbatimArguments: true,
    });
    child.once('error', () => resolve(false));
    child.once('spawn', () => {
      child.unref();
      resolve(true);
    });
  });
}

/** The platform's own way; Windows needs the empty argument, for `start` takes the first quoted one as a title. */
function openerOf(platform: NodeJS.Platform, address: string): [string, string[]] {
  if (platform === 'darwin') return ['open', [address]];
  // A folder's name may hold an ampersand, which ends a command where it stands outside of quotes.
  if (platform === 'win32') return ['cmd', ['/c', 'start', '""', `"${address}"`]];
  return ['xdg-open', [address]];
}
