/** Measures the travel of one stick. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { middleOf } from '../capture/evidence/main-rest.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import { findTravelSpans, type TravelSpans } from '../capture/evidence/travel-spans.ts';
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import type { StickId } from '../pad/stick.ts';
import { axisTravel } from './axis-travel.ts';
import { meanRest, settledDwells } from './mean-rest.ts';
import { partTurn } from './part-turn.ts';
import type { TravelMeasure } from './travel-measure.ts';

/**
 * From captures taken for travel. Without any, extents, jumps and unsteady counts come from what else moves the stick from
 * gate to gate: the turns of a rim capture, or the motions of a log without captures; then nothing is prompted and turn,
 * skew and monotony are null. Null where nothing moves far enough. Domain: any; codes are those of the report.
 */
export function measureTravel(track: Track, stick: StickId, evidence: StickEvidence): TravelMeasure | null {
  const readings = track.sticks[stick];
  const dwells = settledDwells(evidence);
  const about = dwells.length > 0 ? meanRest(dwells) : middleOf(evidence.fields);
  const spans = findTravelSpans(track, stick, about, evidence.captures === 'marked');
  if (readings === undefined || spans === null) return null;
  const step = evidence.step ?? { x: 1, y: 1 };
  const x = axisTravel(readings, 'x', spans.x, sweepsAlong(spans, 'x'), step.x, about.x);
  const y = axisTravel(readings, 'y', spans.y, sweepsAlong(spans, 'y'), step.y, about.y);
  if (x === null && y === null) return null;
  const half = (axis: 'x' | 'y', travel: typeof x): number =>
    travel === null ? halfRange(readings, axis) : (travel.max - travel.min) / 2;
  const isBoth = x !== null && y !== null;
  const scale = {
    x: isBoth ? half('x', x) : halfRange(readings, 'x'),
    y: isBoth ? half('y', y) : halfRange(readings, 'y'),
  };
  return { sweeps: spans.sweeps.length, x, y, ...partTurn(readings, spans.sweeps, scale) };
}

function sweepsAlong({ sweeps }: TravelSpans, axis: 'x' | 'y'): readonly Stretch[] {
  return sweeps.filter(({ along }) => along === axis);
}

function halfRange({ fields }: StickTrack, axis: 'x' | 'y'): number {
  return (fields[axis].maximum - fields[axis].minimum) / 2;
}
