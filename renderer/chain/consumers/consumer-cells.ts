/** The matrix consumers × sticks, and the inverse question, from the evidence at hand. */
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import { percent } from '../../../core/plot/number-text.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { settledDwells } from '../../../core/measure/mean-rest.ts';
import { toleranceRadius } from '../../../core/measure/tolerance-radius.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import type { Chain } from '../../../core/zones/chain.ts';
import type { Consumer } from '../../../core/zones/consumer.ts';
import type { DriverSetting, SurveyedRest } from '../../../core/zones/driver-setting.ts';
import { judgeConsumer, type ConsumerAnswer } from '../../../core/zones/judge-consumer.ts';
import { judgeTrigger, type TriggerExtent } from '../../../core/zones/judge-trigger.ts';
import type { StickUnder } from '../../../core/zones/stick-under.ts';
import { sayStretches } from '../direction-stretches.ts';

export interface StickAtHand {
  readonly stick: StickId;
  readonly under: StickUnder;
}

export interface ConsumerCell {
  /** The worst of what holds: how the cell looks. */
  readonly kind: 'good' | 'so far' | 'slow' | 'bad' | 'none';
  readonly says: string;
  /** Where to look first; null for the rest. */
  readonly direction: number | null;
  readonly answer: ConsumerAnswer | null;
}

export function cellOf({ stick, under }: StickAtHand, consumer: Consumer, driver: Chain | null): ConsumerCell {
  const answer = judgeConsumer(under, stick, consumer, driver);
  if (answer === null) return { kind: 'none', says: 'no chain for it', direction: null, answer };
  const { says, leak, slow, neverReaches } = answer;
  if (says === null) return { kind: 'none', says: 'cannot say: no rest and no gate', direction: null, answer };
  const parts = says.map((word) => {
    if (word === 'leaks') return `leaks, up to ${percent(leak ?? 0)} of full speed`;
    if (word === 'slow in some directions') return `slow toward ${sayStretches(slow)}`;
    if (word === 'never reaches') return `never reaches ${sayStretches(neverReaches)}`;
    return word === 'hidden so far'
      ? `hidden in ${answer.answer.leaks?.releases ?? 0} of ${answer.answer.leaks?.releases ?? 0} seen`
      : word;
  });
  const isBad = says.includes('leaks') || says.includes('never reaches');
  const kind = isBad
    ? 'bad'
    : says.includes('slow in some directions')
      ? 'slow'
      : says.includes('hidden')
        ? 'good'
        : 'so far';
  return { kind, says: parts.join('; '), direction: neverReaches[0] ?? slow[0] ?? null, answer };
}

/** What a consumer makes of a trigger; null where it has no chain for one. */
export function triggerText(extent: TriggerExtent, consumer: Consumer, driver: Chain | null): string | null {
  const answer = judgeTrigger(extent, consumer, driver);
  if (answer === null) return null;
  const rest = answer.atRest > 0 ? `leaks ${percent(answer.atRest)}` : 'free at rest';
  return `${rest}; ${answer.reaches === false ? 'never reaches, ' : ''}${percent(answer.atFull)} pulled`;
}

/** What one survey proves of a rest; null without a settled one. */
export function surveyedRest(evidence: StickEvidence, mapping: StickMapping): SurveyedRest | null {
  const dwells = settledDwells(evidence);
  if (dwells.length === 0) return null;
  return { dwells, fields: evidence.fields, mapping, toleranceRadius: toleranceRadius(evidence, mapping) };
}

/** The smallest driver zone in words. */
export function settingText(setting: DriverSetting | null): string {
  if (setting === null) return '—';
  if (setting.observed === null) return 'none helps';
  if (setting.observed === 0 && setting.tolerance99 === 0) return 'none needed';
  const sure = setting.tolerance99 === null ? '' : `, ${percent(setting.tolerance99)} for 99 %`;
  return `${percent(setting.observed)} for what was seen${sure}`;
}
