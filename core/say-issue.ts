/** Says in plain words what a schema found wrong: no word of the schema library reaches a person. */
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/**
 * The place and what is wrong with it, without a full stop, e.g. `sticks.left.x.min must be a number`. A message given to a
 * schema's own check continues the place: "inner" and "must be less than outer". `whole` is the value that was read.
 */
export function sayIssue(issue: Issue, whole: unknown): string {
  if (issue.code === 'invalid_union') {
    const nearest = nearestOf(issue, whole);
    if (nearest !== undefined) return sayIssue({ ...nearest, path: [...issue.path, ...nearest.path] }, whole);
  }
  const found = follow(whole, issue.path);
  const place = issue.path.length === 0 ? 'it' : sayPath(issue.path);
  if (found === undefined) return `${place} is missing`;
  if (typeof found === 'number' && !Number.isFinite(found)) return `${place} is not a finite number`;
  return `${place} ${sayWrong(issue, found)}`;
}

function sayWrong(issue: Issue, found: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPES[issue.expected] === undefined ? CANNOT_BE : `must be ${TYPES[issue.expected] ?? ''}`;
    case 'invalid_value':
      return `must be ${issue.values.map((one) => JSON.stringify(one)).join(' or ')}`;
    case 'too_small':
    case 'too_big':
      return sayLimit(issue, found);
    case 'not_multiple_of':
      return `is ${String(found)}, it must be a multiple of ${issue.divisor}`;
    case 'unrecognized_keys':
      return `has a key that is not known: ${issue.keys.join(', ')}`;
    case 'invalid_key':
      return 'has a key that cannot be used';
    case 'invalid_format':
    case 'invalid_element':
    case 'invalid_union':
    case 'custom':
      return LIBRARY.test(issue.message) ? CANNOT_BE : issue.message;
  }
}

const CANNOT_BE = 'is not of the form that it must have';

/** How every message of the library's own begins; none of the program's does. */
const LIBRARY = /^(?:invalid|unrecognized|too (?:small|big)|no matching)/iu;

/** The types that a value in JSON may be asked to have. */
const TYPES: Readonly<Record<string, string>> = {
  string: 'a string',
  number: 'a number',
  int: 'a whole number',
  boolean: 'a boolean',
  array: 'an array',
  tuple: 'an array',
  object: 'an object',
  record: 'an object',
  null: 'null',
};

/** Of the forms that a value may have, what is wrong by the one that it is nearest to: with the fewest faults, deepest inside. */
function nearestOf(issue: Extract<Issue, { code: 'invalid_union' }>, whole: unknown): Issue | undefined {
  const isObject = typeof follow(whole, issue.path) === 'object';
  const depth = (issues: readonly Issue[]): number => Math.max(0, ...issues.map(({ path }) => path.length));
  const [nearest] = issue.errors.toSorted(
    (a, b) => (isObject ? Number(depth(b) > 0) - Number(depth(a) > 0) : 0) || a.length - b.length,
  );
  return nearest?.[0];
}

function sayLimit(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, found: unknown): string {
  const size = sizeOf(found);
  const strict = issue.inclusive === false;
  if (issue.code === 'too_small') return `${size}, it must be ${strict ? 'more than' : 'at least'} ${issue.minimum}`;
  return `${size}, it must be ${strict ? 'less than' : 'at most'} ${issue.maximum}`;
}

function sizeOf(found: unknown): string {
  if (Array.isArray(found)) return `has ${counted(found.length, 'entry', 'entries')}`;
  if (typeof found === 'string') return `has ${counted(found.length, 'character', 'characters')}`;
  if (typeof found === 'object' && found !== null)
    return `has ${counted(Object.keys(found).length, 'entry', 'entries')}`;
  return `is ${String(found)}`;
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
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
