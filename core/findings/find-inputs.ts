/** Inputs that fail: buttons that bounce or stick, triggers that do not travel. */
import type { InputsMeasure, TriggerMeasure } from '../measure/inputs-measure.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { decide } from './decide.ts';
import { makeFinding } from './make-finding.ts';

/** A trigger that was pulled reaches at least this share of its field: workshop. */
const PULLED = 0.9;
/** From here on it was pulled at all; a trigger that does not come back to within the same stays pulled. */
const TOUCHED = 0.3;
const BACK = 0.1;
/** A trigger that moved by less in a capture of inputs did not move. */
const MOVED = 0.05;

/**
 * Measure: the longest bounce in ms; one interval of the reports is its uncertainty. In a capture taken for inputs a
 * button that was pressed and never came up fails whatever its bounce; elsewhere it may just be held. What was never seen pressed is named, not judged: nobody may have pressed it.
 */
export function findInputs(
  inputs: InputsMeasure | null,
  intervalUs: number | null,
  captured: boolean,
  limits: Limits,
): Finding | null {
  if (inputs === null) return null;
  const pressed = inputs.buttons.filter((one) => one.pressed);
  const stuck = captured ? pressed.filter((one) => !one.released) : [];
  const weak = Object.entries(inputs.triggers).filter(([, one]) => {
    const reach = (one.max - one.fieldMinimum) / (one.fieldMaximum - one.fieldMinimum);
    return captured && reach >= TOUCHED && reach < PULLED;
  });
  const span = (one: TriggerMeasure): number => one.fieldMaximum - one.fieldMinimum;
  const triggers = Object.entries(inputs.triggers);
  const hung = triggers.filter(
    ([, one]) =>
      captured &&
      one.max - one.fieldMinimum >= TOUCHED * span(one) &&
      one.back - one.fieldMinimum > BACK * span(one) &&
      one.max - one.min >= MOVED * span(one),
  );
  const unmoved = triggers.filter(([, one]) => captured && one.max - one.min < MOVED * span(one));
  const unseen = inputs.buttons.filter((one) => !one.pressed);
  const clean = pressed.filter((one) => one.released);
  // A button that is held all along says nothing of its contact.
  if (clean.length === 0 && !captured) return null;
  const [worst] = pressed.toSorted((a, b) => (b.bounceMs ?? 0) - (a.bounceMs ?? 0));
  const bounce = worst?.bounceMs ?? null;
  const u95 = intervalUs === null ? null : intervalUs / 1000;
  const faulty = [
    ...stuck.map(({ usage }) => `Button ${usage} was pressed and never came up.`),
    ...hung.map(
      ([of, one]) => `The ${of} trigger came back to ${one.back} only, of ${one.fieldMinimum} when it is let go.`,
    ),
    ...weak.map(([of, one]) => `The ${of} trigger ends at ${one.max} of ${one.fieldMaximum}.`),
  ];
  const says =
    bounce === null
      ? 'No button was seen pressed'
      : `Button ${worst?.usage ?? 0} bounces for ${bounce.toFixed(1)} ms at most`;
  const isBouncing = decide(bounce, u95, limits.bounce.value) === 'fail';
  const isUntold = bounce === 0 && intervalUs !== null && intervalUs / 1000 >= limits.bounce.value;
  return makeFinding({
    id: 'inputs-fail',
    stick: null,
    value: bounce,
    u95,
    limit: limits.bounce,
    severity: 'fault',
    ...(faulty.length > 0
      ? { decision: 'fail' as const }
      : unmoved.length > 0 && !isBouncing
        ? { decision: 'cannot say' as const }
        : {}),
    says: {
      fail: faulty[0] ?? `${says}: its contact fails.`,
      pass:
        clean.length === inputs.buttons.length
          ? 'Every button was seen to press and come up cleanly.'
          : `${clean.length} of ${inputs.buttons.length} buttons were seen to press and come up cleanly; of the others nothing is said.`,
      'cannot say':
        unmoved.length > 0 && bounce !== null && bounce <= limits.bounce.value
          ? `The ${unmoved.map(([of]) => of).join(' and the ')} trigger never moved: it was not pulled, or its reading is dead.`
          : isUntold
            ? `No button was seen to bounce, but reports come ${(intervalUs / 1000).toFixed(1)} ms apart: a shorter bounce would not be seen.`
            : `${says}; whether that is too much cannot be told.`,
    },
    for: faulty,
    against: [
      pressed.length > clean.length && stuck.length === 0
        ? `Still down at the end: ${listed(pressed.filter((one) => !one.released))}.`
        : null,
      stuck.length > 0 ? 'It may have been held on purpose to the end.' : null,
      unseen.length > 0 ? `Not seen pressed: ${listed(unseen)}.` : null,
    ],
    causes: [
      hung.length > 0 || weak.length > 0
        ? 'Dirt, a tired spring or a shell that pinches the trigger'
        : 'Dirt or wear on the contact',
      'A cracked joint or a torn trace under the button',
      'The rubber mat is not seated',
    ],
    next: 'Press it once more, slowly; clean the contact and its mat; battery off first.',
    unsure: 'Press it once more, slowly, and record the inputs again.',
  });
}

function listed(buttons: InputsMeasure['buttons']): string {
  return buttons.map(({ usage }) => usage).join(', ');
}
