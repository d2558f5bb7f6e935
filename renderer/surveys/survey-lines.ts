/** Surveys as lines of a list: what each is, of which pad, and whether that is another than the one in hand. */
import type { PadOwner } from '../../core/pad/owner.ts';
import { foreignTo } from '../pads/foreign.ts';
import { padNames } from '../pads/pad-name.ts';
import { surveyLine, type SurveySummary } from './survey-words.ts';

export interface SurveyLine {
  readonly survey: string;
  readonly says: string;
  readonly title: string;
}

/** In the order of the list. */
export function surveyLines(list: readonly SurveySummary[], inHand: PadOwner | null, now: Date): SurveyLine[] {
  const names = padNames(list);
  return list.map((survey, index) => {
    const foreign = foreignTo(inHand, survey);
    const name = names[index];
    const mark = foreign === null ? '' : `${foreign.says}: `;
    return {
      survey: survey.survey,
      says: `${mark}${surveyLine(survey, now, name?.says)}`,
      title: `${foreign === null ? '' : `${foreign.title} `}${surveyLine(survey, now, name?.title)}`,
    };
  });
}
