/** Hands the Workbench's state to its panels. */
import { createContext } from 'svelte';
import type { WorkbenchState } from './workbench-state.svelte.ts';

export const [useWorkbench, provideWorkbench] = createContext<WorkbenchState>();
