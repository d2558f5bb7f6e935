/** The selected sample for the foot line and for those who listen. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { deflect } from '../../core/mapping/deflect.ts';
import { count, percent } from '../../core/plot/number-text.ts';
import type { Sample } from '../stick/sample-state.svelte.ts';
import type { Standing } from '../stick/standing.ts';

/** E.g. `sample at 12.345 s: x 2,051, y 2,047 · now 1.2 % · proposed 0.1 %`: its deflection under each mapping. */
export function sampleSentence(
  { atUs, counts }: Sample,
  { fields }: Pick<StickEvidence, 'fields'>,
  standings: readonly Standing[],
): string {
  const under = standings.map(({ tone, mapping }) => {
    const d = deflect(mapping, fields, counts);
    return `${tone} ${percent(Math.hypot(d.x, d.y))}`;
  });
  return [`sample at ${secondsText(atUs)}: x ${count(counts.x)}, y ${count(counts.y)}`, ...under].join(' · ');
}

export function secondsText(micros: number): string {
  return `${(micros / 1e6).toFixed(3)} s`;
}
