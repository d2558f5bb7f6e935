/** The surveys on this bench as a table. */
import type { Table } from '../kit/figures/table.ts';
import type { SurveySummary } from './survey-words.ts';

/** `names` tells the pads apart, one for each survey. A file holds the whole moment: "today" means nothing in it. */
export function surveysTable(surveys: readonly SurveySummary[], names: readonly { readonly mark: string }[]): Table {
  return {
    caption: 'Surveys taken and imported',
    heads: [
      { says: 'when', words: true },
      { says: 'stage', words: true },
      { says: 'pad', words: true, wraps: true },
      { says: 'state', words: true },
    ],
    rows: surveys.map(({ startedAt, stage, product, simulated, name, finished }, index) => [
      startedAt,
      stage ?? 'none',
      `${product}${simulated ? ' (simulated)' : ''} ${names[index]?.mark ?? ''}${name === product ? '' : `, ${name}`}`,
      finished ? 'finished' : 'cut short',
    ]),
    selected: null,
  };
}
