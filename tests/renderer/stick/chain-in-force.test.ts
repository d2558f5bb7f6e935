import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../core/zones/chain.ts';
import { chainOf } from '../../../core/zones/one-zone.ts';
import { ChainInForce } from '../../../renderer/stick/chain-in-force.svelte.ts';

const radial = chainOf({ shape: 'radial', inner: 0.08, outer: 1 });
const two: Chain = { ...radial, name: 'two', stages: [{ minimumOutput: 0.1 }, ...radial.stages] };

/** A store that holds what it was given, as copies, as settings come back from a bench. */
function inForce(first: Chain | null = radial) {
  const store = { held: first, kept: 0 };
  const chain = new ChainInForce({
    chain: () => structuredClone(store.held),
    keep(next) {
      store.held = structuredClone(next);
      store.kept += 1;
      return Promise.resolve();
    },
  });
  return { chain, store };
}

describe('the chain in force', () => {
  it('is the same object as long as it says the same', () => {
    const { chain } = inForce();
    expect(chain.now).toEqual(radial);
    const first = chain.now;
    chain.setZone({ inner: 0.08 });
    expect(chain.now).toBe(first);
  });

  it('has its one zone changed by the quick controls, and kept once the hand is done', async () => {
    const { chain, store } = inForce();
    chain.setZone({ inner: 0.1 });
    chain.setZone({ inner: 0.12 });
    expect([chain.now.stages, chain.now.name, store.kept]).toEqual([[{ zone: 'radial', inner: 0.12 }], 'radial 12 %, cut', 0]); // prettier-ignore
    chain.settle();
    await Promise.resolve();
    expect([store.held, store.kept]).toEqual([chain.now, 1]);
    // All of it is one step of the chain's own undo.
    chain.editor.undo();
    expect(chain.now).toEqual(radial);
  });

  it('keeps its other stages and its name when the quick controls change the zone in it', () => {
    const { chain } = inForce(two);
    expect(chain.quick?.place).toBe(1);
    chain.setZone({ shape: 'scaledRadial', outer: 0.95 });
    expect(chain.now).toEqual({ ...two, stages: [{ minimumOutput: 0.1 }, { zone: 'scaledRadial', inner: 0.08, outer: 0.95 }] }); // prettier-ignore
  });

  it('has nothing for the quick controls where no stage is a plain zone', () => {
    const { chain } = inForce({ ...two, stages: [{ minimumOutput: 0.1 }] });
    expect(chain.quick).toBeNull();
    chain.setZone({ inner: 0.5 });
    expect(chain.now.stages).toEqual([{ minimumOutput: 0.1 }]);
  });

  it('is one zone again at a word, and undo brings the whole chain back', () => {
    const { chain } = inForce(two);
    chain.single();
    expect(chain.now).toEqual(radial);
    chain.editor.undo();
    expect(chain.now).toEqual(two);
  });

  it('brings an outer edge back with the shape that has one', () => {
    const { chain } = inForce(chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 0.9 }));
    chain.setZone({ shape: 'radial' });
    expect(chain.outer).toBe(0.9);
    chain.setZone({ shape: 'scaledRadial' });
    expect(chain.now.stages).toEqual([{ zone: 'scaledRadial', inner: 0.1, outer: 0.9 }]);
  });

  it('is the usual zone until the settings are read', () => {
    expect(inForce(null).chain.now.name).toBe('scaled radial 10 to 100 %');
  });
});
