/** Names a finding within its stick's list, so that an address can hold it. */
import type { Finding } from '../../core/findings/finding.ts';
import type { StickId } from '../../core/pad/stick.ts';

/** The findings that concern a stick: its own and those of the whole pad, in their order. */
export function findingsOf<F extends Pick<Finding, 'stick'>>(findings: readonly F[], stick: StickId): F[] {
  return findings.filter((finding) => finding.stick === stick || finding.stick === null);
}

/** The id, with the number of it from the second on: `worn-track`, `worn-track.2`. `list` is the stick's own. */
export function findingKey(list: readonly Pick<Finding, 'id'>[], index: number): string {
  const id = list[index]?.id ?? '';
  const number = list.slice(0, index + 1).filter((finding) => finding.id === id).length;
  return number > 1 ? `${id}.${String(number)}` : id;
}

export function findByKey<F extends Pick<Finding, 'id'>>(list: readonly F[], key: string | null): F | null {
  return key === null ? null : (list.find((_, index) => findingKey(list, index) === key) ?? null);
}
