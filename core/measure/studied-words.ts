/** The measures that two surveys are compared by, in words, and what each is in. */
import type { StudiedMeasure } from './repeatability.ts';

export const STUDIED_WORDS: Readonly<
  Record<StudiedMeasure, { readonly says: string; readonly unit: 'counts' | 'share' | 'reach' | 'degrees' }>
> = {
  restX: { says: 'rest x', unit: 'counts' },
  restY: { says: 'rest y', unit: 'counts' },
  offset: { says: 'rest offset', unit: 'share' },
  toleranceRadius: { says: 'tolerance radius', unit: 'share' },
  leastReach: { says: 'least reach', unit: 'reach' },
  meanRadialError: { says: 'mean radial error', unit: 'share' },
  ellipseMajor: { says: 'ellipse, major half axis', unit: 'counts' },
  ellipseMinor: { says: 'ellipse, minor half axis', unit: 'counts' },
  skew: { says: 'skew', unit: 'degrees' },
  roundness: { says: 'roundness', unit: 'counts' },
  circleX: { says: 'gate centre x', unit: 'counts' },
  circleY: { says: 'gate centre y', unit: 'counts' },
};
