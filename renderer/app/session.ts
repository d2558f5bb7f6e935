/** What every view stands on, handed down once by the app: the bench and the state that was read from it. */
import { createContext } from 'svelte';
import type { BenchApi } from '../../shared/bench-api.ts';
import type { MemoryImages } from '../memory/memory-images.svelte.ts';
import type { MemorySession } from '../memory/memory-session.svelte.ts';
import type { PadsState } from '../pads/pads-state.svelte.ts';
import type { StickOnBench } from '../stick/stick-on-bench.svelte.ts';
import type { SettingsState } from '../settings/settings-state.svelte.ts';
import type { SurveysState } from '../surveys/surveys-state.svelte.ts';

export interface Session {
  readonly bench: BenchApi;
  readonly images: MemoryImages;
  readonly memory: MemorySession;
  readonly onBench: StickOnBench;
  readonly pads: PadsState;
  readonly surveys: SurveysState;
  readonly settings: SettingsState;
}

export const [useSession, provideSession] = createContext<Session>();
