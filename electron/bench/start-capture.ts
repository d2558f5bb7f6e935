/** Begins one capture of a survey. */
import type { GuideOptions } from '../../core/capture/capture-guide.ts';
import type { CaptureRun, SurveyState } from './capture-run.ts';
import { RestCapture } from './rest-capture.ts';
import { RimCapture } from './rim-capture.ts';
import type { SurveyPurpose } from './survey-plan.ts';
import type { Asked } from './survey-words.ts';

/** `rests` are the rest points of the same stick, which its rim is taken about. */
export function startCapture(
  purpose: SurveyPurpose,
  options: GuideOptions,
  asked: Asked,
  rests: SurveyState['rests'],
): CaptureRun {
  return purpose === 'rest' ? new RestCapture(options, asked) : new RimCapture(options, asked, rests);
}
