/** Starts the screen: theme, address, bench, then the app. */
import '@fontsource-variable/inter/wght.css';
import './kit/theme/tokens.css';
import './kit/theme/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { connectBench } from './bench/connect-bench.ts';
import { connectionState } from './bench/connection-state.svelte.ts';
import { selection } from './frame/selection-state.svelte.ts';
import { screenScale } from './kit/theme/screen-scale.svelte.ts';
import { theme } from './kit/theme/theme-state.svelte.ts';

theme.follow(window);
screenScale.follow({
  textSize: () => getComputedStyle(document.documentElement).getPropertyValue('--text'),
  addEventListener: (event, hear) => window.addEventListener(event, hear),
});
const bench = await connectBench((connection) => connectionState.hear(connection));
// After the bench: it takes its ticket out of the address first.
selection.followAddress(window);
// A page drawn in another font would move once this one came; where it cannot come the page is drawn without it.
await document.fonts.load("1em 'Inter Variable'").catch(() => []);
const target = document.getElementById('app');
if (target !== null) mount(App, { target, props: { bench } });
