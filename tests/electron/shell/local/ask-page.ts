/** Calls of a page to a local shell that runs as a process of its own. */
import { Page } from './open-shell.ts';
import { ticketOf, type LocalRun } from './run-local.ts';

let lastCall = 0;

export async function askPage<T>(page: Page, name: string, request: unknown): Promise<T> {
  const id = (lastCall += 1);
  page.send({ kind: 'call', id, name, request });
  const isIt = (frame: unknown): boolean => (frame as { id?: number }).id === id;
  await page.until(() => page.frames.some(isIt));
  const { result } = page.frames.find(isIt) as { result: { ok: boolean; value: T; problem: { says: string } } };
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}

export async function enterRun(run: LocalRun): Promise<Page> {
  const [address] = (await run.addresses(1)) as [URL];
  const page = new Page(Number(address.port));
  await page.enter({ ticket: ticketOf(address) });
  return page;
}
