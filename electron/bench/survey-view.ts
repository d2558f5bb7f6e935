/** The survey's state where no capture is under way. */
import type { CaptureView, SurveyState } from './capture-run.ts';
import type { Asked } from './survey-words.ts';

const DIRECTIONS = 72;

export function emptyView(asked: Asked, rests: SurveyState['rests']): CaptureView {
  return {
    toward: null,
    phase: 'waiting',
    releases: { taken: rests.length, asked: asked.releases },
    turns: { clockwise: 0, counterClockwise: 0, asked: asked.turns, underway: 0 },
    covered: Array.from({ length: DIRECTIONS }, () => ({ clockwise: 0, counterClockwise: 0 })),
    uncovered: [],
    rests,
  };
}
