/** Who holds a lock: a process on a machine since its last start, told apart from a later one that got the same number. */
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';

export const ownerSchema = z.object({
  host: z.string(),
  pid: z.number().int().positive(),
  /** When the process was started, in ticks since the machine's start; null where the system does not say. */
  start: z.string().nullable(),
  /** One id for each start of the machine; null where the system has none. */
  boot: z.string().nullable(),
  /** Containers number their processes on their own: the space that `pid` is a number of. */
  space: z.string().nullable(),
  /** For whoever is told that the pad is in use; nothing is decided by it, for clocks are set back. */
  since: z.string(),
});
export type Owner = z.infer<typeof ownerSchema>;

/** `unknown`: nothing here can tell, so whoever asks has to watch whether the lock is renewed. */
export type Life = 'running' | 'ended' | 'unknown';

/** Where the system tells of its processes; another folder only in a test. */
const PROC = '/proc';

export function thisOwner(): Owner {
  return {
    host: hostname(),
    pid: process.pid,
    start: startOf(process.pid)?.start ?? null,
    boot: bootId(),
    space: space(),
    since: new Date().toISOString(),
  };
}

/** Whether the owner still runs, as seen by the process that `self` stands for. */
export function lifeOf(owner: Owner, self: Owner): Life {
  const sameBoot = owner.boot === null || self.boot === null ? null : owner.boot === self.boot;
  // One start of one machine is known by its id, even where its name was changed meanwhile.
  if (owner.host !== self.host && sameBoot !== true) return 'unknown';
  if (sameBoot === false) return 'ended';
  if (owner.space !== self.space) return 'unknown';
  if (!isRunning(owner.pid)) return 'ended';
  const now = startOf(owner.pid);
  if (owner.start === null || now === null) return 'unknown';
  return now.start === owner.start && !now.isOver ? 'running' : 'ended';
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // EPERM: it runs under another account.
    return thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM';
  }
}

function bootId(): string | null {
  return read(`${PROC}/sys/kernel/random/boot_id`)?.trim() ?? null;
}

function space(): string | null {
  try {
    return readlinkSync(`${PROC}/self/ns/pid`);
  } catch {
    return null; // This system has no such spaces, or does not tell.
  }
}

/** proc(5): state is the 3rd and the start the 22nd field; the 2nd, a name in brackets, may hold blanks and brackets. */
function startOf(pid: number): { readonly start: string; readonly isOver: boolean } | null {
  const stat = read(`${PROC}/${pid}/stat`);
  const fields = stat?.slice(stat.lastIndexOf(')') + 2).split(' ');
  const [state, start] = [fields?.[0], fields?.[19]];
  // A process that was killed and not yet fetched by its parent has a number still, and does nothing any more.
  return state === undefined || start === undefined ? null : { start, isOver: state === 'Z' || state === 'X' };
}

function read(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null; // Not a system that tells this way.
  }
}
