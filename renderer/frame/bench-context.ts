/** The bench that every view asks, handed down once by the app. */
import { createContext } from 'svelte';
import type { BenchApi } from '../../shared/bench-api.ts';

export const [useBench, provideBench] = createContext<BenchApi>();
