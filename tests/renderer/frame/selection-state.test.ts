import { describe, expect, test } from 'vitest';
import { Selection, type AddressPlace } from '../../../renderer/frame/selection-state.svelte.ts';

function place(hash: string): AddressPlace & { pushed: string[]; replaced: string[]; go(to: string): void } {
  const hearers = new Set<() => void>();
  const location = { hash };
  const pushed: string[] = [];
  const replaced: string[] = [];
  return {
    location,
    pushed,
    replaced,
    history: {
      pushState: (_state, _unused, address) => {
        location.hash = address;
        pushed.push(address);
      },
      replaceState: (_state, _unused, address) => {
        location.hash = address;
        replaced.push(address);
      },
    },
    addEventListener: (_event, hear) => hearers.add(hear),
    removeEventListener: (_event, hear) => hearers.delete(hear),
    go: (to) => {
      location.hash = to;
      for (const hear of hearers) hear();
    },
  };
}

describe('the selection', () => {
  test('is taken from the address it starts with', () => {
    const selection = new Selection();
    selection.followAddress(place('#/workbench?stick=right&direction=55&survey=s3'));
    expect(selection.view).toBe('workbench');
    expect(selection.stick).toBe('right');
    expect(selection.direction).toBe(55);
    expect(selection.survey).toBe('s3');
  });

  test('writes each choice into the address without a step in the history, but a new view with one', () => {
    const selection = new Selection();
    const window = place('');
    selection.followAddress(window);
    selection.direction = 92;
    selection.stick = 'right';
    expect(window.location.hash).toBe('#/pad?stick=right&direction=90');
    expect(window.pushed).toEqual([]);
    selection.open('survey');
    expect(window.pushed).toEqual(['#/survey?stick=right&direction=90']);
  });

  test('forgets the finding with its stick or survey, and keeps it with another direction', () => {
    const selection = new Selection();
    selection.followAddress(place('#/workbench?stick=left&direction=55&survey=s3&finding=short-range'));
    selection.direction = 90;
    selection.stick = 'left';
    expect(selection.finding).toBe('short-range');
    selection.stick = 'right';
    expect(selection.finding).toBeNull();
    selection.finding = 'overshoot';
    selection.survey = 's4';
    expect(selection.finding).toBeNull();
  });

  test('gives a link to another view with what is selected', () => {
    const selection = new Selection();
    selection.followAddress(place('#/pad/fitting?stick=right&direction=55&survey=s3'));
    expect(selection.addressOf({ view: 'findings' })).toBe('#/findings?stick=right&direction=55&survey=s3');
    expect(selection.addressOf({ view: 'workbench', direction: 90, finding: 'worn-track.2' })).toBe(
      '#/workbench?stick=right&direction=90&survey=s3&finding=worn-track.2',
    );
  });

  test('follows the address when the user goes back', () => {
    const selection = new Selection();
    const window = place('#/pad?stick=left');
    selection.followAddress(window);
    selection.open('pad', 'fitting');
    expect(selection.detail).toBe('fitting');
    window.go('#/pad?stick=left');
    expect(selection.detail).toBeNull();
  });

  test('does not touch the address when the same direction is pointed at again', () => {
    const selection = new Selection();
    const window = place('#/workbench?stick=left&direction=55');
    selection.followAddress(window);
    const before = window.replaced.length;
    selection.direction = 56;
    expect(window.replaced.length).toBe(before);
  });

  test('leaves the address alone once it no longer follows', () => {
    const selection = new Selection();
    const window = place('#/pad?stick=left');
    const end = selection.followAddress(window);
    end();
    selection.stick = 'right';
    expect(window.location.hash).toBe('#/pad?stick=left');
  });
});

test('a survey is never compared with itself', () => {
  const own = new Selection();
  own.survey = 's1';
  own.against = 's2';
  expect(own.against).toBe('s2');
  own.survey = 's2';
  expect(own.against).toBeNull();
});
