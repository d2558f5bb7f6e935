/** The captures of one stick: which guide leads each, and what it tells. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { FlickGuide } from '../../../../core/capture/guide/flick-guide.ts';
import { RimGuide } from '../../../../core/capture/guide/rim-guide.ts';
import { TravelGuide } from '../../../../core/capture/guide/travel-guide.ts';
import { WarmUpGuide } from '../../../../core/capture/guide/warm-up-guide.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';
import type { CaptureRun, SurveyState } from './capture-run.ts';
import { guidedCapture, pushedToward, wishToward } from './guided-capture.ts';
import { RestThenStill } from './rest-then-still.ts';
import { judgeWarmUp } from './warm-up-judge.ts';

/** The rest points of the same stick, which its other captures are taken about. */
type Rests = SurveyState['rests'];

export function restCapture(options: GuideOptions, asked: Asked): CaptureRun {
  const guide = new RestThenStill(options, asked.releases);
  return guidedCapture(guide, () => emptyView(asked, [...guide.rests]), {
    reading: (t, { x, y, buttonDown }) => guide.reading(t, x, y, buttonDown),
    view: () => ({
      phase: guide.phase,
      toward: pushedToward(guide.releases),
      releases: { taken: guide.rests.length, asked: guide.releases.asked },
    }),
    wish: () => wishToward('pushAndLetGo', guide.releases),
  });
}

export function rimCapture(options: GuideOptions, asked: Asked, rests: Rests): CaptureRun {
  const guide = new RimGuide({ ...options, turns: asked.turns, rests });
  return guidedCapture(guide, () => emptyView(asked, rests), {
    reading: (t, { x, y }) => guide.reading(t, x, y),
    view: () => ({
      phase: guide.phase,
      turns: { ...guide.turns, asked: asked.turns, underway: guide.underway },
      covered: guide.covered.map(({ clockwise, counterClockwise }) => ({ clockwise, counterClockwise })),
      uncovered: [...guide.uncovered],
    }),
    wish: () =>
      guide.phase === 'waiting' && guide.wanted !== null
        ? { does: 'turn', turns: guide.more, way: guide.wanted }
        : null,
    // Good once the turns are there and only stretches are open: before that a press by mistake would end the capture.
    confirm: () => {
      if (Math.min(guide.turns.clockwise, guide.turns.counterClockwise) >= asked.turns) guide.confirm();
    },
  });
}

export function travelCapture(options: GuideOptions, asked: Asked, rests: Rests): CaptureRun {
  const guide = new TravelGuide({ ...options, sweeps: asked.sweeps, rests });
  return guidedCapture(guide, () => emptyView(asked, rests), {
    reading: (t, { x, y, buttonDown }) => guide.reading(t, x, y, buttonDown),
    view: () => ({
      phase: guide.phase,
      toward: guide.toward,
      sweeps: { taken: [...guide.taken], asked: guide.asked, along: guide.along },
    }),
    wish: () => wishToward('sweep', guide),
    confirm: () => guide.confirm(),
  });
}

export function flickCapture(options: GuideOptions, asked: Asked, rests: Rests): CaptureRun {
  const guide = new FlickGuide({ ...options, flicks: asked.flicks, rests });
  return guidedCapture(guide, () => emptyView(asked, rests), {
    reading: (t, { x, y, buttonDown }) => guide.reading(t, x, y, buttonDown),
    view: () => ({
      phase: guide.phase,
      toward: guide.phase === 'settling' ? null : guide.toward,
      flicks: { taken: [...guide.taken], asked: guide.asked },
    }),
    wish: () => wishToward('flick', guide),
    confirm: () => guide.confirm(),
  });
}

export function warmUpCapture(options: GuideOptions, asked: Asked, rests: Rests): CaptureRun {
  const guide = new WarmUpGuide({ ...options, judge: (dwells) => judgeWarmUp(dwells, options.fields) });
  return guidedCapture(guide, () => emptyView(asked, rests), {
    reading: (t, { x, y, buttonDown }) => guide.reading(t, x, y, buttonDown),
    view: () => {
      const { drift, steady } = guide.judgement;
      const warmUp = { dwells: guide.dwells.length, drift: drift === null ? null : { ...drift }, steady };
      return { phase: guide.phase, toward: pushedToward(guide), warmUp };
    },
    wish: () => wishToward('pushAndLetGo', guide),
    confirm: () => guide.confirm(),
  });
}
