/** Whatever is wrong with what was read, it is said in plain words. */
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseMemoryMap } from '../../core/image/parse-memory-map.ts';
import { parseMemoryProtocol } from '../../core/image/parse-memory-protocol.ts';
import { parseMappingFile } from '../../core/mapping/mapping-file.ts';
import { parseProfileFile } from '../../core/pad/profile-file.ts';
import { readSchema } from '../../core/read-schema.ts';
import { parseChain } from '../../core/zones/parse-chain.ts';
import { parseConsumer } from '../../core/zones/parse-consumer.ts';
import { parseLimitsFile } from '../../core/findings/limits-file.ts';
import { calls, type CallName } from '../../shared/contract.ts';

/** The library's own words, and the language's. */
const FOREIGN =
  /invalid|expected|received|too small|too big|unrecognized|pattern|undefined|NaN|\[object|discriminator|ZodError|>=|<=/iu;

const says = (schema: z.ZodType, value: unknown): string => {
  const read = readSchema(schema, value, 'x', 'The file');
  if (read.ok) throw new Error('It was read.');
  return read.problem.says.replace(/^The file: |; correct it and try again\.$/gu, '');
};

describe('a fault', () => {
  it.each<readonly [z.ZodType, unknown, string]>([
    [z.number(), 'x', 'it must be a number'],
    [z.object({ a: z.number() }), {}, 'a is missing'],
    [z.object({ a: z.int() }), { a: 1.5 }, 'a must be a whole number'],
    [z.object({ a: z.boolean() }), { a: 1 }, 'a must be a boolean'],
    [z.object({ a: z.null() }), { a: 1 }, 'a must be null'],
    [z.array(z.string()), {}, 'it must be an array'],
    [z.tuple([z.number(), z.number()]), [1], 'it has 1 entry, it must be at least 2'],
    [z.record(z.string(), z.number()), 5, 'it must be an object'],
    [z.object({ a: z.array(z.object({ b: z.string() })) }), { a: [{ b: 'c' }, { b: 1 }] }, 'a[1].b must be a string'],
    [z.number().max(5), 6, 'it is 6, it must be at most 5'],
    [z.number().gt(5), 5, 'it is 5, it must be more than 5'],
    [z.number().multipleOf(4), 6, 'it is 6, it must be a multiple of 4'],
    [z.string().min(3), 'ab', 'it has 2 characters, it must be at least 3'],
    [z.array(z.number()).max(1), [1, 2], 'it has 2 entries, it must be at most 1'],
    [z.enum(['a', 'b']), 'c', 'it must be "a" or "b"'],
    [z.strictObject({}), { a: 1 }, 'it has a key that is not known: a'],
    [z.record(z.enum(['a']), z.number()), { a: 1, b: 2 }, 'it has a key that is not known: b'],
    [z.record(z.string().max(2), z.number()), { abc: 1 }, 'abc has a key that cannot be used'],
    [z.string().regex(/^a/u), 'b', 'it is not of the form that it must have'],
    [z.string().regex(/^a/u, 'must begin with a'), 'b', 'it must begin with a'],
    [z.url(), 'b', 'it is not of the form that it must have'],
    [z.iso.datetime(), 'b', 'it is not of the form that it must have'],
    [z.custom<number>((value) => value === 1), 2, 'it is not of the form that it must have'],
    [z.number().refine((value) => value > 1, 'must be more than that'), 1, 'it must be more than that'],
    [z.never(), 1, 'it is not of the form that it must have'],
    [
      z.discriminatedUnion('a', [z.object({ a: z.literal('x') })]),
      { a: 'y' },
      'a is not of the form that it must have',
    ],
    [z.union([z.object({ a: z.number() }), z.null()]), { a: 'x' }, 'a must be a number'],
    [z.number(), Number.NaN, 'it is not a finite number'],
  ])('%#: is %s', (schema, value, expected) => {
    expect(says(schema, value)).toBe(expected);
  });
});

const BAD: readonly unknown[] = [
  undefined, null, 0, -1, 1.5, Number.POSITIVE_INFINITY, '', 'x', true, [], [1], {}, { kind: 'x' }, { a: { b: null } }, { limits: 5 }, { sticks: [] },
  { kind: 'stickwright-mapping', version: 2 }, { kind: 'stickwright-chain', version: 1, stages: [{}] }, { stages: [{ zone: 'x' }] },
  { kind: 'stickwright-chain', version: 1, name: 'x', stages: [{ quantise: { bits: 1.5 } }], needs: 'y' },
  { kind: 'stickwright-consumer', version: 1, name: 5, takes: 'x' }, { pad: 1, stick: 2 }, { upload: '', name: [], piece: {}, last: 0 },
]; // prettier-ignore

describe('no word of the schema library reaches a person', () => {
  it.each([
    ['a mapping file', parseMappingFile],
    ['a chain', parseChain],
    ['a consumer', parseConsumer],
    ['a memory map', parseMemoryMap],
    ['a memory protocol', parseMemoryProtocol],
    ['a profile', parseProfileFile],
    ['a limits file', parseLimitsFile],
  ] as const)('of %s', (_, parse) => {
    for (const value of BAD) {
      const read = parse(value);
      if (read.ok) throw new Error(`${JSON.stringify(value)} was read.`);
      expect(read.problem.says).not.toMatch(FOREIGN);
      expect(read.problem.says).toMatch(/^[A-Z][^\n]*\.$/u);
    }
  });

  it('of any request to the bench', () => {
    let refused = 0;
    for (const name of Object.keys(calls) as CallName[])
      for (const value of [...BAD, { survey: 'x', stick: 'middle' }, { limits: { seat: -1 } }, { chain: {} }]) {
        const read = readSchema(calls[name].request as z.ZodType, value, 'x', 'The request');
        if (read.ok) continue;
        refused += 1;
        expect(read.problem.says, `${name} ${JSON.stringify(value)}`).not.toMatch(FOREIGN);
      }
    expect(refused).toBeGreaterThan(200);
  });
});
