/** Measures buttons, hat and triggers of a log: what was seen of them. */
import { markedSpans } from '../capture/evidence/capture-marks.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import type { StillSpan } from '../capture/evidence/still-spans.ts';
import type { InputTrack, SwitchTrack, Track, ValueTrack } from '../capture/evidence/track.ts';
import type { FieldSource } from '../pad/layout.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { bounceMs } from './contact-bounce.ts';
import type { ButtonMeasure, InputsMeasure, TriggerMeasure } from './inputs-measure.ts';

type IsIn = (t: number) => boolean;

/**
 * Over the captures taken for inputs where there are any, else over the whole log. `pressed`: seen down; `released`:
 * seen to come up again. A button that is held all along is pressed and not released. Hat directions stand in order of
 * their angle, each once. A trigger's extent is in raw counts. Null where the pad has no such controls or the log no
 * reading of them.
 */
export function measureInputs(track: Track): InputsMeasure | null {
  const { inputs, layout } = track;
  if (inputs === undefined || !hasReadings(inputs)) return null;
  const spans = inputSpans(track);
  const isIn = (t: number): boolean => spans.some(({ startUs, endUs }) => t >= startUs && t <= endUs);
  const { hat } = inputs;
  return {
    buttons: inputs.buttons.map((button) => measureButton(button, spans, isIn)),
    hat: hat === null ? null : directionsOf(valuesIn(hat, spans)),
    triggers: Object.fromEntries(
      STICKS.flatMap((of) => measureTrigger(of, inputs.triggers[of], layout.triggers[of], spans)),
    ),
    clicks: layout.clicks,
  };
}

function hasReadings({ buttons, hat, triggers }: InputTrack): boolean {
  return [...buttons, hat, triggers.left, triggers.right].some((one) => (one?.t.length ?? 0) > 0);
}

function inputSpans(track: Track): readonly StillSpan[] {
  const endUs = lastUs(track);
  const marked = STICKS.flatMap((stick) => markedSpans(track.marks, stick, endUs));
  const own = marked.filter(({ purpose }) => purpose === 'inputs');
  return own.length > 0 ? own : [{ startUs: 0, endUs }];
}

function measureButton(button: SwitchTrack, spans: readonly StillSpan[], isIn: IsIn): ButtonMeasure {
  const { usage, t, down } = button;
  const pressed = valuesIn({ t, value: down }, spans).includes(1);
  const released = t.some((at, i) => i > 0 && down[i] === 0 && isIn(at));
  return { usage, pressed, released, bounceMs: pressed ? bounceMs(button, isIn) : null };
}

function measureTrigger(
  of: StickId,
  trigger: ValueTrack | undefined,
  source: FieldSource | undefined,
  spans: readonly StillSpan[],
): [StickId, TriggerMeasure][] {
  if (trigger === undefined || source === undefined) return [];
  let [min, max, back] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN];
  for (const value of valuesIn(trigger, spans)) {
    if (Number.isNaN(value)) continue;
    min = Math.min(min, value);
    back = value > max ? value : Math.min(back, value);
    max = Math.max(max, value);
  }
  if (min > max) return [];
  const { logicalMinimum: fieldMinimum, logicalMaximum: fieldMaximum } = source.control;
  return [[of, { min, max, back, fieldMinimum, fieldMaximum }]];
}

function directionsOf(values: readonly number[]): number[] {
  return [...new Set(values.filter((value) => !Number.isNaN(value)))].sort((one, other) => one - other);
}

/** Every value that held at some time in the spans: the one before a span's beginning still held then. */
function valuesIn(told: { readonly t: Float64Array; readonly value: ArrayLike<number> }, spans: readonly StillSpan[]) {
  const values: number[] = [];
  for (let i = 0; i < told.t.length; i += 1) {
    const from = told.t[i] ?? Number.NaN;
    const to = told.t[i + 1] ?? Number.POSITIVE_INFINITY;
    if (spans.some(({ startUs, endUs }) => from <= endUs && to > startUs)) values.push(told.value[i] ?? Number.NaN);
  }
  return values;
}
