/** Reads a value of unknown shape by a schema; what does not fit becomes one plain sentence that names the place. */
import type { z } from 'zod';
import { done, failed, type Result } from './result.ts';

/**
 * A message given to a schema's own check continues the place: "inner" and "must be less than outer".
 * `what` names the thing read, as the sentence begins, e.g. "The mapping file". Only the first fault is told:
 * "The mapping file: sticks.left.x.min must be a number; correct it and try again."
 */
export function readSchema<T>(schema: z.ZodType<T>, value: unknown, code: string, what: string): Result<T> {
  const read = schema.safeParse(value);
  if (read.success) return done(read.data);
  const issue = read.error.issues[0];
  if (issue === undefined) return failed(code, `${what} cannot be read; check the file.`);
  return failed(code, `${what}: ${sayIssue(issue, value)}; correct it and try again.`);
}

function sayIssue(issue: z.core.$ZodIssue, whole: unknown): string {
  if (issue.code === 'invalid_union') {
    const [nearest] = issue.errors.toSorted((a, b) => a.length - b.length);
    const first = nearest?.[0];
    if (first !== undefined) return sayIssue({ ...first, path: [...issue.path, ...first.path] }, whole);
  }
  const found = follow(whole, issue.path);
  const place = issue.path.length === 0 ? 'it' : sayPath(issue.path);
  if (found === undefined) return `${place} is missing`;
  if (typeof found === 'number' && !Number.isFinite(found)) return `${place} is not a finite number`;
  if (issue.code === 'invalid_type') return `${place} must be ${article(issue.expected)}`;
  if (issue.code === 'invalid_value')
    return `${place} must be ${issue.values.map((one) => JSON.stringify(one)).join(' or ')}`;
  if (issue.code === 'too_small' || issue.code === 'too_big') return `${place} ${sayLimit(issue, found)}`;
  if (issue.code === 'unrecognized_keys') return `${place} has a key that is not known: ${issue.keys.join(', ')}`;
  return `${place} ${issue.message}`;
}

function sayLimit(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, found: unknown): string {
  const size = Array.isArray(found) ? `has ${found.length} entries` : `is ${String(found)}`;
  const strict = issue.inclusive === false;
  if (issue.code === 'too_small') return `${size}, it must be ${strict ? 'more than' : 'at least'} ${issue.minimum}`;
  return `${size}, it must be ${strict ? 'less than' : 'at most'} ${issue.maximum}`;
}

/** `["sectors", 3, "inner"]` as `sectors[3].inner`. */
function sayPath(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, step) =>
      typeof step === 'number' ? `${text}[${step}]` : text === '' ? String(step) : `${text}.${String(step)}`,
    '',
  );
}

function follow(whole: unknown, path: readonly PropertyKey[]): unknown {
  let at = whole;
  for (const step of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<PropertyKey, unknown>>)[step];
  }
  return at;
}

function article(expected: string): string {
  return /^[aeio]/.test(expected) ? `an ${expected}` : `a ${expected}`;
}
