/** Two hosts side by side: which layers there are to read, and how the stick stands for each. Owns the choice, renders nothing. */
import type { StickId } from '../../core/pad/stick.ts';
import type { Chain } from '../../core/zones/chain.ts';
import type { Reply } from '../../shared/contract.ts';
import { measureUnder, withZones, type Standing } from './standing.ts';
import type { SurveyDetails } from './opened-survey.svelte.ts';
import { hostsOfImage, hostsOfSurvey, usualPair, type Host } from './host-list.ts';

export interface HostSources {
  stick(): StickId;
  survey(): SurveyDetails | null;
  /** The image whose layers are read; null for what the log itself says of them. */
  image(): Reply<'images.open'> | null;
  chain(): Chain;
}

export class HostsState {
  readonly #from: HostSources;
  /** Names chosen by hand; one that is not there any more gives way to the usual one. */
  #chosen = $state.raw<readonly [string | null, string | null]>([null, null]);

  readonly hosts: readonly Host[] = $derived.by(() => {
    const image = this.#from.image();
    const held = this.#from.survey()?.sticks[this.#from.stick()] ?? null;
    if (image !== null) return hostsOfImage(image, this.#from.stick());
    return held === null ? [] : hostsOfSurvey(held.layers);
  });
  /** Places in `hosts`. */
  readonly pair: readonly [number, number] = $derived.by(() => {
    const [first, second] = usualPair(this.hosts);
    return [this.#placeOf(0) ?? first, this.#placeOf(1) ?? second];
  });
  readonly #measured = $derived.by(() => {
    const evidence = this.#from.survey()?.sticks[this.#from.stick()]?.evidence;
    if (evidence === undefined || this.whyNot !== null) return [null, null] as const;
    const under = (place: number, tone: 'first' | 'second') => {
      const mapping = this.hosts[place]?.mapping ?? null;
      return mapping === null ? null : measureUnder(evidence, { tone, mapping });
    };
    return [under(this.pair[0], 'first'), under(this.pair[1], 'second')] as const;
  });
  /** How the stick stands for each of the two; null where a host reads nothing of it. */
  readonly standings: readonly [Standing | null, Standing | null] = $derived.by(() => {
    const [first, second] = this.#measured;
    const chain = this.#from.chain();
    return [first && withZones(first, chain), second && withZones(second, chain)];
  });
  /** Why nothing can be shown, with what to do; null where it can. */
  readonly whyNot: string | null = $derived.by(() => {
    if (this.#from.survey()?.log.domain === 'reported')
      return 'The survey has reported counts, after the pad’s own mapping: what a host of another layer sees cannot be computed from them. Survey the pad in its mode of sensor counts, if it has one.';
    if (this.hosts.length === 0)
      return 'This log does not say what the pad stores. Choose an image of its memory above; the Memory view reads one from the pad or takes a file in.';
    return null;
  });

  constructor(from: HostSources) {
    this.#from = from;
  }

  choose(which: 0 | 1, name: string): void {
    this.#chosen = which === 0 ? [name, this.#chosen[1]] : [this.#chosen[0], name];
  }

  #placeOf(which: 0 | 1): number | null {
    const place = this.hosts.findIndex(({ name }) => name === this.#chosen[which]);
    return place < 0 ? null : place;
  }
}
