/** Opens on the bench what is selected, once a view asks for it. To be called while a component is made. */
import { untrack } from 'svelte';
import type { Selection } from '../frame/selection-state.svelte.ts';
import type { SettingsState } from '../frame/settings-state.svelte.ts';
import type { Reply } from '../../shared/contract.ts';
import type { StickOnBench } from './stick-on-bench.svelte.ts';

/** What is open stays open while other views are shown: a survey that runs is not measured beside itself. */
const ASKING: readonly Selection['view'][] = ['findings', 'workbench', 'memory'];

export function followSelection(
  stick: StickOnBench,
  {
    selection,
    surveys,
    settings,
  }: { selection: Selection; surveys: { readonly list: Readonly<Reply<'surveys.list'>> }; settings: SettingsState },
): void {
  const asking = $derived(ASKING.includes(selection.view));
  // A survey that has just been finished holds more than when it was opened.
  const finished = $derived(surveys.list.find(({ survey }) => survey === selection.survey)?.finished ?? false);
  /** Other limits judge anew; before they are read, everything would be judged twice. */
  const limits = $derived(settings.values === null ? null : JSON.stringify(settings.values.limits));
  const opened = $derived(JSON.stringify([selection.survey, finished, limits]));
  let last: string | null = null;

  $effect(() => {
    if (!asking || limits === null || opened === last) return;
    last = opened;
    untrack(() => void stick.survey.open(selection.survey));
  });

  $effect(() => untrack(() => stick.survey.follow()));

  // Judging needs no proposal; it would only wait for one.
  $effect(() => {
    if (selection.view === 'findings' || !asking || stick.details === null) return;
    untrack(() => void stick.proposals.ensure());
  });
}
