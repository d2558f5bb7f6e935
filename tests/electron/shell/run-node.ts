/** Runs a file in a Node process of its own, as it would run outside of the test runner. */
import { spawn } from 'node:child_process';

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function runNode(
  args: readonly string[],
  options: { env?: Record<string, string>; input?: string } = {},
): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { env: { ...process.env, ...options.env }, stdio: 'pipe' });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (part: Buffer) => (stdout += part.toString()));
    child.stderr.on('data', (part: Buffer) => (stderr += part.toString()));
    child.on('close', (code) => resolve({ code, stdout, stderr }));
    child.stdin.end(options.input ?? '');
  });
}
