/** Plans that were shown, by handles of their own, until the program ends. */
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { Patch } from '../../../core/image/patch.ts';
import type { PatchAsk } from '../../../core/image/ask.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply } from '../../../shared/contract.ts';
import { sha256Of } from '../../store/sha256.ts';

export interface HeldPlan {
  readonly patch: Patch;
  readonly map: MemoryMap;
  /** Planned here, and not opened from a file that anybody may have edited. */
  readonly isOwn: boolean;
}

/** Nobody compares more plans than this; the oldest is forgotten. */
const MOST_PLANS = 64;

export class ShownPlans {
  readonly #plans = new Map<string, HeldPlan>();

  /** `asks` is what is known now; what is written is asked again, of the pad in hand. */
  hold(patch: Patch, map: MemoryMap, from: 'here' | 'file', asks: readonly PatchAsk[]): Reply<'images.plan'> {
    const text = `${JSON.stringify(patch, null, 2)}\n`;
    const plan = sha256Of(new TextEncoder().encode(text)).slice(0, 32);
    // A file of the very same bytes is the plan that was made here.
    const isOwn = from === 'here' || this.#plans.get(plan)?.isOwn === true;
    this.#plans.delete(plan);
    this.#plans.set(plan, { patch, map, isOwn });
    const [oldest] = this.#plans.keys();
    if (this.#plans.size > MOST_PLANS && oldest !== undefined) this.#plans.delete(oldest);
    const { sha256, changes } = patch;
    return { plan, image: sha256, map: map.id, bytes: differingBytes(changes), changes, patch: text, asks };
  }

  find(plan: string): Result<HeldPlan> {
    const held = this.#plans.get(plan);
    if (held !== undefined) return done(held);
    return failed('plan-unknown', 'This plan is no longer known; plan it again.');
  }
}

function differingBytes(changes: Patch['changes']): number {
  const pairs = (hex: string): string[] => hex.match(/../gu) ?? [];
  return changes.reduce((sum, { old, new: now }) => {
    const before = pairs(old);
    return sum + pairs(now).filter((byte, index) => byte !== before[index]).length;
  }, 0);
}
