/** The table twin of the rules on which findings are drawn. */
import type { Table } from '../kit/figures/table.ts';
import { DECISION_SAYS, findingTitle } from './finding-words.ts';
import type { KeyedFinding } from '../stick/judged-stick.ts';
import { writeNumber, writeQuantity } from '../kit/words/quantity-words.ts';

export function findingsTable(findings: readonly KeyedFinding[]): Table {
  return {
    caption: 'What was judged: value with expanded uncertainty against the limit',
    heads: ['check', 'decision', 'value', 'limit', 'limit from'],
    rows: findings.map(({ finding }) => [
      findingTitle(finding),
      DECISION_SAYS[finding.decision],
      writeQuantity(finding.value, finding.u95, finding.unit),
      finding.limit === null ? '—' : writeNumber(finding.limit, finding.unit),
      finding.limitFrom,
    ]),
    selected: null,
  };
}
