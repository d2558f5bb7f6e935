/** Whether numbers may go into a memory: whose they are, what their counts mean, and whose memory it is. */
import { kinshipOf, sayOwner, type PadOwner } from '../pad/owner.ts';
import type { Domain } from '../pad/stick.ts';
import { done, failed, type Result } from '../result.ts';
import type { PatchAsk } from './ask.ts';

/** Where numbers are from, as surveys, mappings, images and patches tell it. */
export interface NumberSource {
  /** Null where nothing is known of their pad. */
  readonly pad: PadOwner | null;
  /** Null where nobody says what the counts mean. */
  readonly domain: Domain | null;
}

/**
 * `owners` are the pads that the memory is known to be of (one image may have been read from several); none where that is not
 * known. Refused: `numbers-reported` where the counts have gone through a pad's mapping already, `numbers-other-pad` where two
 * serial numbers or units are known and differ, or the products do. What is left open is asked, never assumed: `unknown-pad`.
 */
export function judgeSource({ pad, domain }: NumberSource, owners: readonly PadOwner[]): Result<readonly PatchAsk[]> {
  if (domain === 'reported')
    return failed(
      'numbers-reported',
      'These are reported counts, after the pad’s own mapping: they are for the host alone and never go into a memory.',
    );
  const kinships = owners.map((owner) => kinshipOf(pad, owner));
  if (kinships.includes('same')) return done([]);
  const [first] = owners;
  if (first !== undefined && pad !== null && !kinships.includes('unknown'))
    return failed(
      'numbers-other-pad',
      `These numbers are of the pad ${sayOwner(pad)}, and this memory is of ${sayOwner(first)}; survey this pad for numbers of its own.`,
    );
  return done([{ code: 'unknown-pad', says: sayUnknown(pad, first ?? null) }]);
}

function sayUnknown(pad: PadOwner | null, owner: PadOwner | null): string {
  if (pad === null)
    return 'It is not known which pad these numbers are of; write them only if you know that it is this one.';
  if (owner === null)
    return `These numbers are of the pad ${sayOwner(pad)}, and it is not known which pad this memory is of; write them only if you know that it is that one.`;
  return `These numbers are of a pad of this kind (${sayOwner(pad)}), and nothing tells whether it is this very one (${sayOwner(owner)}); write them only if you know.`;
}
