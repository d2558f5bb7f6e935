/** What the command line of the blind test asks for. */
import { parseArgs } from 'node:util';

/** The seed whose misses fail the run; others report. */
export const GATED_SEED = 1;
export const editions = ['first', 'second'] as const;

export interface BlindOptions {
  readonly seed: number;
  /** Draws of a cell; null for each edition's own. */
  readonly units: number | null;
  /** Draws at a size of a curve; null for 12 % of the units. */
  readonly curve: number | null;
  readonly editions: readonly (typeof editions)[number][];
  /** Faults, or `sound`, `slip`, `pair` of the second edition; null for all. */
  readonly only: readonly string[] | null;
  readonly pads: readonly string[] | null;
  readonly all: boolean;
  readonly keep: boolean;
  /** Where the logs of the second edition go for a look, and its draws, a line each. */
  readonly write: string | null;
  readonly json: string | null;
}

export function readOptions(): BlindOptions {
  const { values } = parseArgs({
    options: {
      seed: { type: 'string', default: String(GATED_SEED) },
      units: { type: 'string' },
      curve: { type: 'string' },
      edition: { type: 'string' },
      only: { type: 'string', multiple: true },
      pad: { type: 'string', multiple: true },
      all: { type: 'boolean', default: false },
      keep: { type: 'boolean', default: false },
      write: { type: 'string' },
      json: { type: 'string' },
    },
  });
  const { edition } = values;
  const asked = editions.filter((one) => edition === undefined || one === edition);
  if (asked.length === 0) throw new Error(`There is no edition ${edition ?? ''}; there are ${editions.join(' and ')}.`);
  return {
    seed: countOf(values.seed),
    units: values.units === undefined ? null : countOf(values.units),
    curve: values.curve === undefined ? null : countOf(values.curve),
    editions: asked,
    only: values.only ?? null,
    pads: values.pad ?? null,
    all: values.all,
    keep: values.keep,
    write: values.write ?? null,
    json: values.json ?? null,
  };
}

function countOf(text: string): number {
  const count = Number(text);
  if (!Number.isInteger(count) || count < 1) throw new Error(`${text} is no whole number above 0.`);
  return count;
}

/** Draws at each size of a curve. */
export function curveUnits({ curve }: BlindOptions, units: number): number {
  return curve ?? Math.max(8, Math.round(units * 0.12));
}
