/** A stick as a survey gives it, and the details a bench answers with, for the Workbench's tests. */
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import type { ReloadStore } from '../../../renderer/stick/over-reload.ts';
import { measureUnder, withZones, type Standing } from '../../../renderer/stick/standing.ts';
import type { SurveyDetails } from '../../../renderer/stick/opened-survey.svelte.ts';
import { chainOf, type Zone } from '../../../core/zones/one-zone.ts';
import { emptyReport } from '../../support/empty-report.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';
import { makeBenchStick, makeEvidence, sixTurns } from '../../support/make-evidence.ts';

export const zone: Zone = { shape: 'radial', inner: 0.08, outer: 1 };

/** Spans of 1000 counts about 2000, so that a count is a per mille. */
export const mapping: StickMapping = {
  x: { min: 1000, centre: 2000, max: 3000 },
  y: { min: 1000, centre: 2000, max: 3000 },
};

/** 24 releases about (2020, 2000), a round gate of radius 950 about it. */
export function wholeStick(): StickEvidence {
  return makeBenchStick(
    { seed: 3, releases: 24, rest: { x: 2020, y: 2000 }, scatter: 4, noise: 1, gate: 950 },
    sensorFields,
  );
}

/** One release at (2030, 2000) and a gate of radius 1000 about it without 100 … 110°. */
export function oneRelease(): StickEvidence {
  return makeEvidence({
    dwells: [{ point: { x: 2030, y: 2000 } }],
    turns: sixTurns((degrees) => (degrees >= 100 && degrees <= 110 ? null : 1000)),
    about: { x: 2030, y: 2000 },
  });
}

/** A gate of 120 counts about the middle of eight bits, wide enough to the right to meet the limit of the field. */
export function clippedStick(): StickEvidence {
  return makeEvidence({
    fields: reportedFields,
    dwells: [{ point: { x: 128, y: 127 } }],
    turns: sixTurns((degrees) => (degrees === 0 ? 127 : 120)),
    about: { x: 128, y: 127 },
  });
}

/** The whole range of eight bits. */
export const eightBits = { x: { min: 0, centre: 127.5, max: 255 }, y: { min: 0, centre: 127.5, max: 255 } };

export function standUnder(evidence: StickEvidence, under: StickMapping = mapping, asked: Zone = zone): Standing {
  return withZones(measureUnder(evidence, { tone: 'now', mapping: under }), chainOf(asked));
}

export function surveyOf(sticks: SurveyDetails['sticks'], domain: 'sensor' | 'reported' = 'sensor'): SurveyDetails {
  return {
    survey: 's1',
    name: 'Bench pad, fitted.padlog',
    identity: { vendorId: 1, productId: 2, product: 'Bench pad', serial: null, transport: 'simulated' },
    pad: { vendorId: 1, productId: 2, serial: null, unit: null },
    log: emptyReport(domain).log,
    mappingFrom: 'range',
    sticks,
    gates: {},
    report: emptyReport(domain),
  };
}

/** The evidence as it crosses to the screen: plain, mutable arrays. */
export function asSent(
  evidence: StickEvidence,
  current: StickMapping,
  layers: NonNullable<SurveyDetails['sticks']['left']>['layers'] = null,
): NonNullable<SurveyDetails['sticks']['left']> {
  return structuredClone({ evidence, current, layers }) as NonNullable<SurveyDetails['sticks']['left']>;
}

/** A window's session storage with nothing in it. */
export function memoryStore(): ReloadStore {
  const kept = new Map<string, string>();
  return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
}
