/** The names of the contract's calls and events alone, for a shell that must stay small: the preload carries no schemas. */
import type { CallName, EventName } from './contract.ts';

const callNames: Readonly<Record<CallName, true>> = {
  'bench.hello': true,
  'pads.list': true,
  'pads.open': true,
  'pads.close': true,
  'pads.plugDemo': true,
  'pads.demos': true,
  'demo.hand': true,
  'survey.start': true,
  'survey.say': true,
  'surveys.list': true,
  'surveys.open': true,
  'surveys.propose': true,
  'surveys.strip': true,
  'surveys.import': true,
  'surveys.export': true,
  'settings.read': true,
  'settings.write': true,
};

const eventNames: Readonly<Record<EventName, true>> = {
  'pads.changed': true,
  'pad.health': true,
  'survey.state': true,
  'surveys.changed': true,
  'settings.changed': true,
};

/** True for the name of a call; names inherited from Object are none. */
export function isCallName(name: unknown): name is CallName {
  return typeof name === 'string' && Object.hasOwn(callNames, name);
}

/** True for the name of an event. */
export function isEventName(name: unknown): name is EventName {
  return typeof name === 'string' && Object.hasOwn(eventNames, name);
}

/** Every event, in the contract's order. */
export const EVENT_NAMES = Object.keys(eventNames) as readonly EventName[];
