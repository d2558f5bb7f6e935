/**
 * From a nudge to the complete prediction on the evidence of a survey of at least 60,000 samples: history step, reach by
 * direction, least reach, radial error, rest offset, zones and onset, ledger rows and the figures' inputs; the same functions that the Workbench
 * calls. Then heap in use over ten simulated minutes of a nudge each 100 ms. Run: `node --expose-gc tests/perf/nudge.ts`.
 */
import { gatherEvidence } from '../../core/capture/evidence/gather-evidence.ts';
import { rangeMapping } from '../../core/mapping/range-mapping.ts';
import { NO_HISTORY, takeStep } from '../../core/mapping/nudge-history.ts';
import { numberOf, withNumber, type MappingNumber } from '../../core/mapping/mapping-number.ts';
import { storedMapping } from '../../core/mapping/stored-mapping.ts';
import { readTrack } from '../../electron/bench/measure/read-track.ts';
import { planeInput, profileInput, railsInput } from '../../renderer/workbench/figure-inputs.ts';
import { ledgerRows } from '../../renderer/workbench/ledger.ts';
import { measureUnder, withZones } from '../../renderer/stick/standing.ts';
import { chainOf } from '../../core/zones/one-zone.ts';
import { makeSurveyLog } from './survey-log.ts';

const NUDGES = 600;
const TEN_MINUTES = 6000;
const chain = chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 1 });
const PATTERN: readonly (readonly [MappingNumber, number])[] = [
  ['x.max', 4],
  ['y.min', -16],
  ['x.centre', 1],
  ['x.max', -4],
  ['y.min', 16],
  ['x.centre', -1],
];

const track = await readTrack(makeSurveyLog());
if (!track.ok) throw new Error(track.problem.says);
const samples = track.value.track.sticks.left?.t.length ?? 0;
const evidence = gatherEvidence(track.value.track, 'left');
const now = storedMapping(track.value.track.marks)?.left ?? rangeMapping(evidence.fields);
const given = withZones(measureUnder(evidence, { tone: 'now', mapping: now }), chain);
let history = takeStep(NO_HISTORY, now);

function nudge(at: number): number {
  const [of, by] = PATTERN[at % PATTERN.length] ?? ['x.max', 0];
  const from = performance.now();
  const base = history.present ?? now;
  const mapping = withNumber(base, of, numberOf(base, of) + by);
  history = takeStep(history, mapping);
  const own = withZones(measureUnder(evidence, { tone: 'yours', mapping }), chain);
  const standings = [given, own];
  const shown = [
    ledgerRows(standings, 'sensor'),
    profileInput(standings, 'sensor'),
    planeInput(evidence, standings, chain),
    railsInput(evidence, standings),
  ];
  const millis = performance.now() - from;
  if (shown.length !== 4 || own.rim === null) throw new Error('The prediction is not complete.');
  return millis;
}

for (let at = 0; at < 60; at += 1) nudge(at);
const times = Array.from({ length: NUDGES }, (_, at) => nudge(at));
console.log(
  JSON.stringify({
    figure: 'nudge to complete prediction',
    samples,
    nudges: NUDGES,
    p50Millis: quantile(times, 0.5),
    p95Millis: quantile(times, 0.95),
    maxMillis: Math.max(...times),
  }),
);

const heap: number[] = [];
for (let at = 0; at < TEN_MINUTES; at += 1) {
  if (at % (TEN_MINUTES / 5) === 0) heap.push(heapMebibytes());
  nudge(at);
}
heap.push(heapMebibytes());
console.log(
  JSON.stringify({
    figure: 'heap over ten simulated minutes of nudges, every step kept for undo',
    nudges: TEN_MINUTES,
    firstMebibytes: heap[0],
    lastMebibytes: heap.at(-1),
    bytesANudge: (((heap.at(-1) ?? 0) - (heap[0] ?? 0)) * 2 ** 20) / TEN_MINUTES,
  }),
);

function heapMebibytes(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

function quantile(values: number[], p: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * p))] ?? Number.NaN;
}
