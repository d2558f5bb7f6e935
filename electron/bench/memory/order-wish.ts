/** From what is wished for a pad to what will be written to it, or why it must not be. */
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { ownerOf, type PadOwner } from '../../../core/pad/owner.ts';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { MemoryNeeds } from './memory-needs.ts';
import type { PadSession } from '../pads/pad-session.ts';
import { orderPlan, orderRepair, type ReadImage, type WriteOrder } from './write-order.ts';

/** A pad whose memory a session may touch. */
export interface Ready {
  readonly session: PadSession;
  readonly protocol: MemoryProtocol;
}

/** What is known of the pad in the session by now. */
export function padIn({ source, unit }: PadSession): PadOwner {
  return ownerOf(source.transport.identity, unit);
}

/** `looked` is the journal that the image read last was looked at for. */
export async function orderWish(
  ports: Pick<MemoryNeeds, 'plans' | 'journals' | 'vault'>,
  wish: Request<'memory.preview'>['wish'],
  { session, protocol }: Ready,
  read: ReadImage,
  looked: string | undefined,
): Promise<Result<WriteOrder>> {
  const owner = padIn(session);
  if ('plan' in wish) {
    const held = ports.plans.find(wish.plan);
    if (!held.ok) return held;
    const stands = held.value.patch.restores === true ? null : await brokenBefore(ports, session, read);
    if (stands !== null) return { ok: false, problem: stands };
    return orderPlan(held.value, read, owner, protocol, (image) => ports.vault.read(image));
  }
  const [doing, id] = 'finish' in wish ? (['finish', wish.finish] as const) : (['restore', wish.restore] as const);
  if (looked !== id) return failed('journal-not-shown', 'Look first at what the broken write left in the pad.');
  const broken = await ports.journals.open(id, owner);
  return broken.ok ? orderRepair(doing, broken.value, read, owner, protocol) : broken;
}

/** What must be seen to before new numbers are written; an earlier image may be brought back all the same. */
async function brokenBefore(
  { journals }: Pick<MemoryNeeds, 'journals'>,
  { source }: PadSession,
  { unit }: ReadImage,
): Promise<Problem | null> {
  const [rotted] = await journals.rotted();
  if (rotted !== undefined) return rotted.problem;
  const open = await journals.ofPad(source.transport.identity, unit);
  if (open === null) return null;
  return failed('journal-open', 'A write to this pad was broken off; finish it or restore what was before first.')
    .problem;
}
