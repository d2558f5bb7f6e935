/** The byte changes that turn one image into another, as a patch file writes them. */
import { z } from 'zod';
import { ownerSchema, type PadOwner } from '../pad/owner.ts';
import { domainSchema, type Domain } from '../pad/stick.ts';
import { readSchema } from '../read-schema.ts';
import type { NumberSource } from './number-source.ts';
import type { Result } from '../result.ts';

export interface Change {
  readonly offset: number;
  /** Hex, as many bytes as `new`. */
  readonly old: string;
  readonly new: string;
  /** E.g. `factory left x.max 3400 → 3350`. */
  readonly means: string;
}

export interface Patch {
  readonly kind: 'stickwright-patch';
  readonly version: 1;
  /** Id of the memory map. */
  readonly map: string;
  /** Of the one image that it applies to, hex. */
  readonly sha256: string;
  readonly size: number;
  readonly changes: readonly Change[];
  /** SHA-256 of the image afterwards: a patch that was edited by hand gives another. */
  readonly result?: string | undefined;
  /** True for the inverse of a patch: it brings back an image that was accepted before, plausible or not. */
  readonly restores?: boolean | undefined;
  /** The pad that the new bytes are of; null or missing where that is not known. */
  readonly pad?: PadOwner | null | undefined;
  /** What the counts of the new numbers mean; null or missing where nobody said. */
  readonly domain?: Domain | null | undefined;
}

const hex = z.string().regex(/^(?:[0-9a-f]{2})+$/u, 'must be pairs of hex digits in lower case');

const sha256 = z.string().regex(/^[0-9a-f]{64}$/u, 'must be 64 hex digits in lower case');

const patchSchema = z.object({
  kind: z.literal('stickwright-patch'),
  version: z.literal(1),
  map: z.string(),
  sha256,
  size: z.number().int().min(1),
  changes: z
    .array(
      z
        .object({ offset: z.number().int().min(0), old: hex, new: hex, means: z.string() })
        .refine((change) => change.old.length === change.new.length, {
          path: ['new'],
          message: 'must have as many bytes as old: a patch overwrites and never inserts',
        }),
    )
    .min(1, 'must hold at least one change'),
  result: sha256.optional(),
  restores: z.boolean().optional(),
  pad: ownerSchema.nullish(),
  domain: domainSchema.nullish(),
});

/** Where the new bytes of a patch are from; of an older file nothing is known. */
export function sourceOfPatch({ pad = null, domain = null }: Patch): NumberSource {
  return { pad, domain };
}

/** Takes the parsed JSON. */
export function parsePatch(value: unknown): Result<Patch> {
  return readSchema(patchSchema, value, 'patch-file', 'The patch file');
}
