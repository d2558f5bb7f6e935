/** A track without readings, for what only its head and its report times decide. */
import type { Track } from '../../core/capture/evidence/track.ts';
import type { Mark } from '../../core/log/visitor.ts';
import type { Domain } from '../../core/pad/stick.ts';

export interface TrackWish {
  readonly reportTimes?: readonly number[];
  readonly duplicates?: number;
  readonly gaps?: Track['gaps'];
  readonly marks?: readonly Mark[];
  readonly headerDomain?: Domain;
  readonly layoutDomain?: Domain;
}

export function makeTrack(wish: TrackWish): Track {
  return {
    header: {
      kind: 'stickwright-report-log',
      version: 1,
      program: null,
      startedAt: '2020-01-01T00:00:00Z',
      stage: null,
      domain: wish.headerDomain ?? 'reported',
      pad: { vendorId: 1, productId: 2, product: 'pad', serial: null, transport: 'simulated', unit: null },
      descriptor: null,
      profile: null,
    },
    layout: {
      profile: null,
      domain: wish.layoutDomain ?? 'reported',
      sticks: {},
      stickSources: {},
      triggers: {},
      hat: null,
      buttons: [],
      clicks: {},
      noSticks: 'The reports name no axes.',
    },
    sticks: {},
    reportTimes: Float64Array.from(wish.reportTimes ?? []),
    duplicates: wish.duplicates ?? 0,
    marks: wish.marks ?? [],
    gaps: wish.gaps ?? [],
  };
}
