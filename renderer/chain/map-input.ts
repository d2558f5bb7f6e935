/** What the map of the plane is drawn from. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { deflect } from '../../core/mapping/deflect.ts';
import { rawPoint } from '../../core/mapping/raw-point.ts';
import type { MapInput } from '../../core/plot/map-figure.ts';
import type { Tone } from '../../core/plot/figure.ts';
import type { RimMeasure } from '../../core/measure/rim-measure.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';

export interface MappedStick {
  readonly tone: Tone;
  readonly mapping: StickMapping;
  readonly rim: RimMeasure | null;
}

/** Gate and rest points as deflections under a mapping. */
export function stickOnMap(evidence: StickEvidence, { tone, mapping, rim }: MappedStick): MapInput['sticks'][number] {
  const { fields } = evidence;
  const about = evidence.rim?.about;
  const gate = (rim?.directions ?? []).flatMap(({ x, y }) => {
    if (about === undefined || x === null || y === null) return [];
    const d = deflect(mapping, fields, rawPoint(about, fields, { x, y }));
    return [d.x, d.y];
  });
  const rests = (evidence.rest?.dwells ?? []).flatMap(({ point }) => {
    const d = deflect(mapping, fields, point);
    return [d.x, d.y];
  });
  return { tone, gate, rests };
}
