/** The words of the command line for where a gate is known from. */
import type { GateSource } from '../../../core/findings/outline/known-gate.ts';

export const GATE_SOURCES = {
  'earlier-part': 'earlier part',
  'reference-part': 'reference part',
  'ring-turned': 'ring turned',
} as const satisfies Readonly<Record<string, GateSource>>;

export type GateWord = keyof typeof GATE_SOURCES;
