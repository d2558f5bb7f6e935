/** The names of the contract's calls and events alone, for a shell that must stay small: the preload carries no schemas. */
import type { CallName, EventName } from './contract.ts';

const callNames: Readonly<Record<CallName, true>> = {
  'bench.hello': true,
  'pads.list': true,
  'pads.open': true,
  'pads.close': true,
  'pads.inHand': true,
  'pads.take': true,
  'pads.plugDemo': true,
  'pads.demos': true,
  'demo.hand': true,
  'demo.unplug': true,
  'demo.plugIn': true,
  'demo.takeAway': true,
  'survey.start': true,
  'survey.say': true,
  'surveys.underway': true,
  'surveys.list': true,
  'surveys.open': true,
  'surveys.propose': true,
  'surveys.strip': true,
  'surveys.import': true,
  'surveys.export': true,
  'gates.offered': true,
  'gates.choose': true,
  'settings.read': true,
  'settings.write': true,
  'images.list': true,
  'images.import': true,
  'images.export': true,
  'images.open': true,
  'images.compare': true,
  'images.plan': true,
  'images.readPatch': true,
  'images.apply': true,
  'images.find': true,
  'maps.list': true,
  'maps.add': true,
  'maps.save': true,
  'maps.prove': true,
  'memory.about': true,
  'memory.allow': true,
  'memory.read': true,
  'memory.preview': true,
  'memory.write': true,
  'memory.abort': true,
  'memory.show': true,
  'memory.latest': true,
  'journals.list': true,
  'journals.all': true,
  'journals.dismiss': true,
};

const eventNames: Readonly<Record<EventName, true>> = {
  'pads.changed': true,
  'pad.health': true,
  'hand.changed': true,
  'survey.state': true,
  'surveys.changed': true,
  'survey.judged': true,
  'settings.changed': true,
  'images.changed': true,
  'maps.changed': true,
  'memory.state': true,
  'journals.changed': true,
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
