/** Opens an address in the browser that the desktop is set to; a machine without one is not an error. */
import { spawn } from 'node:child_process';

/** False when there is nothing to open it with; the address was printed anyway. */
export function openBrowser(address: string, platform: NodeJS.Platform = process.platform): Promise<boolean> {
  const [command, args] = openerOf(platform);
  return new Promise((resolve) => {
    const child = spawn(command, [...args, address], {
      stdio: 'ignore',
      detached: true,
      // The empty argument of `start` must reach it as two quotes.
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
function openerOf(platform: NodeJS.Platform): [string, string[]] {
  if (platform === 'darwin') return ['open', []];
  if (platform === 'win32') return ['cmd', ['/c', 'start', '""']];
  return ['xdg-open', []];
}
