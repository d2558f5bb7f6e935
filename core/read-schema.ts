/** Reads a value of unknown shape by a schema; what does not fit becomes one plain sentence that names the place. */
import type { z } from 'zod';
import { done, failed, type Result } from './result.ts';
import { sayIssue } from './say-issue.ts';

/**
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
