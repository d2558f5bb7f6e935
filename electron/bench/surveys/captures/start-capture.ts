/** Begins one capture of a survey. */
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { CaptureRun, SurveyState } from './capture-run.ts';
import { disturbanceCapture } from './disturbance-capture.ts';
import { InputsCapture } from './inputs-capture.ts';
import type { PlannedCapture } from '../survey-plan.ts';
import type { Asked } from '../survey-words.ts';
import { flickCapture, restCapture, rimCapture, travelCapture, warmUpCapture } from './stick-captures.ts';

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
      return restCapture(options, asked);
    case 'rim':
      return rimCapture(options, asked, rests);
    case 'travel':
      return travelCapture(options, asked, rests);
    case 'flick':
      return flickCapture(options, asked, rests);
    case 'warmUp':
      return warmUpCapture(options, asked, rests);
    case 'disturbance':
    case 'inputs':
      return of === undefined ? null : disturbanceCapture(of, options, layout, asked, rests);
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
