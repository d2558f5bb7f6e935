/** The published and real descriptors in tests/golden/descriptors; a file added there is a case more. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface GoldenField {
  readonly usagePage: number;
  readonly usage: number | null;
  readonly reportId: number | null;
  readonly bitOffset: number;
  readonly bitSize: number;
  readonly logicalMin: number;
  readonly logicalMax: number;
  readonly count: number;
  readonly signed: boolean;
  readonly nullState: boolean;
  readonly usageMax?: number;
  readonly usageRepeats?: boolean;
  readonly physicalMin?: number;
  readonly physicalMax?: number;
  readonly unit?: string;
  readonly array?: boolean;
  readonly relative?: boolean;
  readonly name?: string;
  readonly aliases?: readonly { readonly usagePage: number; readonly usage: number }[];
}

export interface GoldenSample {
  readonly hex: string;
  readonly origin: string;
  readonly label?: string;
  /** By `PAGE:USAGE`; `buttons` is a mask, bit n − 1 = button n. */
  readonly expected: Readonly<Record<string, number>>;
  readonly nullFields?: readonly string[];
  /** By axis name, on −1 … 1. */
  readonly publishedNormalised?: Readonly<Record<string, number>>;
  readonly normalisedTolerance?: number;
}

export interface GoldenDescriptor {
  readonly id: string;
  readonly source: string;
  readonly descriptorHex: string;
  readonly descriptorLength: number;
  readonly hasReportIds: boolean;
  readonly inputReports: Readonly<Record<string, { readonly payloadBits: number; readonly payloadBytes: number }>>;
  readonly applicationCollections: readonly { readonly usagePage: number; readonly usage: number }[];
  readonly expectedFields: readonly GoldenField[];
  readonly padding: readonly Pick<GoldenField, 'reportId' | 'bitOffset' | 'bitSize' | 'count'>[];
  readonly sampleReports: readonly GoldenSample[];
}

const folder = path.join(import.meta.dirname, '../golden/descriptors');

export const goldenDescriptors: readonly GoldenDescriptor[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(path.join(folder, name), 'utf8')) as GoldenDescriptor);

export function goldenDescriptor(id: string): GoldenDescriptor {
  const found = goldenDescriptors.find((golden) => golden.id === id);
  if (found === undefined) throw new Error(`There is no golden descriptor ${id}.`);
  return found;
}
