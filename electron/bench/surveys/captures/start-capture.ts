/** Begins one capture of a survey. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { CaptureRun, SurveyState } from './capture-run.ts';
import { DisturbanceCapture } from './disturbance-capture.ts';
import { FlickCapture } from './flick-capture.ts';
import { InputsCapture } from './inputs-capture.ts';
import { RestCapture } from './rest-capture.ts';
import { RimCapture } from './rim-capture.ts';
import type { PlannedCapture } from '../survey-plan.ts';
import type { Asked } from '../survey-words.ts';
import { TravelCapture } from './travel-capture.ts';
import { WarmUpCapture } from './warm-up-capture.ts';
import { judgeWarmUp } from './warm-up-judge.ts';

export interface CaptureStart extends Pick<GuideOptions, 'startUs' | 'mark'> {
  readonly layout: PadLayout;
  readonly asked: Asked;
  /** The rest points of the same stick, which its rim, travel and flicks are taken about. */
  readonly rests: SurveyState['rests'];
}

/** Null where the pad does not have the stick. */
export function startCapture({ stick, purpose, of }: PlannedCapture, start: CaptureStart): CaptureRun | null {
  const { layout, asked, rests, startUs, mark } = start;
  if (stick === null) return new InputsCapture(layout, startUs, asked);
  const fields = layout.sticks[stick];
  if (fields === undefined) return null;
  const options: GuideOptions = { stick, fields, startUs, mark };
  switch (purpose) {
    case 'rest':
      return new RestCapture(options, asked);
    case 'rim':
      return new RimCapture(options, asked, rests);
    case 'travel':
      return new TravelCapture(options, asked, rests);
    case 'flick':
      return new FlickCapture(options, asked, rests);
    case 'warmUp':
      return new WarmUpCapture(options, (dwells) => judgeWarmUp(dwells, fields), asked, rests);
    case 'disturbance':
    case 'inputs':
      return of === undefined ? null : new DisturbanceCapture(of, options, layout, asked, rests);
  }
}

/** The marks around a capture; warm-up has one of its own, which older readers pass over. */
export function edgeMark(
  planned: PlannedCapture,
  edge: 'begin' | 'end',
): { name: string; detail: Record<string, unknown> } {
  return planned.purpose === 'warmUp'
    ? { name: 'warmUp', detail: { stick: planned.stick, edge } }
    : { name: 'capture', detail: { ...planned, edge } };
}
