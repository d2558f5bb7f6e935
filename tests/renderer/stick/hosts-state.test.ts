import { describe, expect, test } from 'vitest';
import { sameSentence, hostSentence } from '../../../renderer/workbench/hosts/host-sentence.ts';
import { hostsOfSurvey, usualPair } from '../../../renderer/stick/host-list.ts';
import { HostsState } from '../../../renderer/stick/hosts-state.svelte.ts';
import type { ImageDetails } from '../../../renderer/memory/memory-images.svelte.ts';
import type { SurveyDetails } from '../../../renderer/stick/opened-survey.svelte.ts';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { asSent, mapping, standUnder, surveyOf, wholeStick, zone } from '../support/bench-stick.ts';

const off = { ...mapping, x: { min: 900, centre: 1900, max: 2900 } };
const evidence = wholeStick();

function stateOf(survey: SurveyDetails, image: ImageDetails | null = null): HostsState {
  return new HostsState({ stick: () => 'left', survey: () => survey, image: () => image, chain: () => chainOf(zone) });
}

function imageWith(hosts: ImageDetails['hosts']): ImageDetails {
  const map = { id: 'm', name: 'map', proof: 'proven' } as const;
  return { image: 'a'.repeat(64), size: 1, map, fitting: ['m'], layers: [], hosts };
}

describe('two hosts', () => {
  test('are taken from what the log says of the layers, and see what each layer makes of the stick', () => {
    const hosts = stateOf(surveyOf({ left: asSent(evidence, mapping, { user: off, factory: mapping }) }));
    expect(hosts.hosts.map(({ layer }) => layer)).toEqual(['user', 'factory']);
    const [first, second] = hosts.standings;
    // Rest at (2020, 2000): 120 counts of a span of 1,000 off under one, 20 under the other.
    expect(first?.rest?.offset.magnitude).toBeCloseTo(0.12, 2);
    expect(second?.rest?.offset.magnitude).toBeCloseTo(0.02, 2);
    expect([first?.tone, second?.tone]).toEqual(['first', 'second']);
  });

  test('are those of the image where one is chosen, two of different layers first', () => {
    const hosts = stateOf(
      surveyOf({ left: asSent(evidence, mapping) }),
      imageWith([
        { host: 'A', layer: 'user', sticks: { left: off } },
        { host: 'B', layer: 'user', sticks: { left: off } },
        { host: 'C', layer: 'factory', sticks: { left: mapping } },
        { host: 'D', layer: null, sticks: {} },
      ]),
    );
    expect(hosts.pair).toEqual([0, 2]);
    hosts.choose(1, 'B');
    expect(hosts.pair).toEqual([0, 1]);
    const [first, second] = hosts.standings;
    expect(first !== null && second !== null && sameSentence(first, second)).toMatch(/^Both read the same/u);
    hosts.choose(1, 'D');
    expect(hosts.standings[1]).toBeNull();
  });

  test('say why nothing can be shown', () => {
    const reported = surveyOf({ left: asSent(evidence, mapping, { user: off, factory: mapping }) }, 'reported');
    expect(stateOf(reported).whyNot).toContain('reported counts');
    expect(stateOf(reported).standings).toEqual([null, null]);
    expect(stateOf(surveyOf({ left: asSent(evidence, mapping) })).whyNot).toContain('does not say what the pad stores');
  });
});

test('a layer that holds nothing is a host that reads nothing', () => {
  const hosts = hostsOfSurvey({ user: null, factory: mapping });
  expect(hosts.map(({ layer }) => layer)).toEqual([null, 'factory']);
  expect(usualPair(hosts)).toEqual([1, 0]);
  expect(usualPair([])).toEqual([0, 0]);
});

test('a host in a sentence', () => {
  expect(hostSentence(standUnder(evidence)).replaceAll('\u202f', ' ')).toMatch(
    /^rests 1\.\d % off the centre, least reach 0\.9\d\d at \d+°; the zone: (?:hidden|leaks)/u,
  );
});
