/** The survey's state where no capture is under way. */
import { directionCount } from '../../../core/geometry/directions.ts';
import type { CaptureView, SurveyState } from './captures/capture-run.ts';
import type { Asked } from './survey-words.ts';

const FOUR = 4;

export function emptyView(asked: Asked, rests: SurveyState['rests']): CaptureView {
  return {
    toward: null,
    phase: 'waiting',
    releases: { taken: rests.length, asked: asked.releases },
    turns: { clockwise: 0, counterClockwise: 0, asked: asked.turns, underway: 0 },
    covered: Array.from({ length: directionCount }, () => ({ clockwise: 0, counterClockwise: 0 })),
    uncovered: [],
    rests,
    sweeps: { taken: [], asked: FOUR * asked.sweeps, along: null },
    flicks: { taken: [], asked: FOUR * asked.flicks },
    warmUp: null,
    inputs: null,
  };
}

/** Everything taken in a capture, counted: it grows while something comes of it. */
export function takenIn({ releases, turns, sweeps, flicks, warmUp, inputs }: CaptureView): number {
  const seen = inputs?.filter(({ missing }) => missing === null).length ?? 0;
  const each = [releases.taken, turns.clockwise, turns.counterClockwise, sweeps.taken.length, flicks.taken.length];
  return each.reduce((sum, count) => sum + count, seen + (warmUp?.dwells ?? 0));
}
