/** The survey that is shown, in the words of the foot line. */
import type { PadOwner } from '../../core/pad/owner.ts';
import { foreignTo } from '../pads/foreign.ts';
import { whenText } from '../kit/words/when-text.ts';
import { type SurveySummary } from './survey-words.ts';

export function shownWords(
  survey: SurveySummary | null,
  inHand: PadOwner | null,
  now: Date,
): { readonly says: string; readonly title: string | undefined } {
  if (survey === null) return { says: 'no survey', title: undefined };
  const foreign = foreignTo(inHand, survey);
  const mark = foreign === null ? '' : `${foreign.says}: `;
  const says = `${mark}survey ${survey.stage ?? survey.name}, ${whenText(survey.startedAt, now)}`;
  return { says, title: foreign?.title };
}
