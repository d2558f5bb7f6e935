// @vitest-environment happy-dom
/** What the pad's view says of a pad that is unplugged: nothing of now. */
import { expect, it } from 'vitest';
import AxisRails from '../../../renderer/pads/AxisRails.svelte';
import { LiveFigures } from '../../../renderer/pads/live-figures.svelte.ts';
import PadIdentity from '../../../renderer/pads/PadIdentity.svelte';
import type { PadDetails, PadHealth } from '../../../renderer/pads/pad-words.ts';
import { showPart } from '../support/show-part.ts';

const pad: PadDetails = {
  pad: 'p1',
  identity: { vendorId: 0x1209, productId: 0x000a, product: 'Bench pad', serial: 'A1', transport: 'simulated' },
  domain: 'sensor',
  profile: null,
  descriptor: null,
};
const health = { state: 'streaming', ratePerSecond: 998, loopDelayMillis: 17.3, gaps: 0 } as unknown as PadHealth;

function identity(gone: boolean): string {
  const shown = showPart(PadIdentity, () => undefined, { pad, layout: null, health, unit: null, gone });
  const [delay] = [...shown.querySelectorAll('dt')].filter(({ textContent }) => textContent === 'bench delay');
  return delay?.nextElementSibling?.textContent ?? '';
}

function rails(gone: boolean): string {
  const props = { axes: [], figures: new LiveFigures(), noSticks: null, gone, startAgain: () => undefined };
  return showPart(AxisRails, () => undefined, props).textContent;
}

it('tells no delay of the last second of a pad that is gone', () => {
  expect(identity(false)).toBe('17.3 ms at most in the last second');
  expect(identity(true)).toBe('–');
});

it('calls the counts of a pad that is gone the last ones', () => {
  expect(rails(false)).toContain('raw counts now');
  expect(rails(true)).toContain('the last raw counts before the pad was gone');
  expect(rails(true)).not.toContain('now');
});
