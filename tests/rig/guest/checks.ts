/** What the guest tells: one JSON line a check or figure on its second serial port. */
import { openSync, writeSync } from 'node:fs';

const port = openSync(process.env['RIG_OUT'] ?? '/dev/stdout', 'w');
let failures = 0;

function write(line: Record<string, unknown>): void {
  writeSync(port, `${JSON.stringify(line)}\n`);
}

/** A check that the host counts. */
export function check(name: string, ok: boolean, facts: Record<string, unknown> = {}): void {
  if (!ok) failures += 1;
  write({ check: name, ok, ...facts });
}

/** A measured figure; judged by nobody here. */
export function figure(name: string, facts: Record<string, unknown>): void {
  write({ figure: name, ...facts });
}

export function failed(): number {
  return failures;
}

export function sleep(millis: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, millis));
}

/** Asks again and again until the answer is not undefined; undefined when the time is over. */
export async function until<T>(ask: () => T | undefined, millis = 5000): Promise<T | undefined> {
  const end = performance.now() + millis;
  for (;;) {
    const answer = ask();
    if (answer !== undefined || performance.now() > end) return answer;
    await sleep(5);
  }
}
