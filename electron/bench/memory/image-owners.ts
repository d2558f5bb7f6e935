/** Whose memory kept images are, and from which pad the numbers of a plan come. */
import type { NumberSource } from '../../../core/image/number-source.ts';
import { kinshipOf, type Kinship, type PadOwner } from '../../../core/pad/owner.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';
import type { VaultEntry } from '../../store/image-vault.ts';

type StoreWish = Extract<Request<'images.plan'>['wish'], { store: unknown }>['store'];

/** What the bench itself knows of a survey, a kept mapping or a write: the page's word is not taken for it. */
export interface NumberSources {
  survey(survey: string): Promise<Result<NumberSource>>;
  /** Null where no mapping is kept under the name. */
  kept(name: string): NumberSource | null;
  /** A write that ended. */
  ended(journal: string): Promise<Result<Reply<'journals.list'>[number]>>;
}

/** The pads that an image was read from by the program; none for a file of which nothing more is known. */
export function ownersOf(image: string, entries: readonly VaultEntry[]): PadOwner[] {
  return entries.flatMap(({ sha256, pad }) => (sha256 === image && pad !== null ? [pad] : []));
}

export async function sourceOf({ from }: StoreWish, sources: NumberSources): Promise<Result<NumberSource>> {
  if ('survey' in from) return sources.survey(from.survey);
  if ('file' in from) return done({ pad: from.file, domain: from.domain });
  const kept = sources.kept(from.kept);
  if (kept !== null) return done(kept);
  return failed('mapping-unknown', `No mapping is kept as "${from.kept}"; choose one from the list.`);
}

const NEAREST: readonly Kinship[] = ['same', 'unknown', 'other'];

/** Bytes of another image: of its pads the one that is nearest to the pads of this memory. */
export function nearestOwner(theirs: readonly PadOwner[], ours: readonly PadOwner[]): PadOwner | null {
  const rank = (owner: PadOwner): number =>
    Math.min(...ours.map((one) => NEAREST.indexOf(kinshipOf(owner, one))), NEAREST.length);
  return theirs.toSorted((a, b) => rank(a) - rank(b))[0] ?? null;
}
