import path from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const root = path.resolve(import.meta.dirname, '..');
const out = (name: string): string => path.join(root, 'out', name);

const PURE = ['tests/core/**/*.test.ts', 'tests/shared/**/*.test.ts', 'tests/reference/**/*.test.ts'];

export default defineConfig({
  root: path.join(root, 'renderer'),
  base: './',
  plugins: [svelte({ configFile: false })],
  // `npm run dev` beside a running local host (PORT=47310): live reload, the same bridge.
  server: { host: '127.0.0.1', proxy: { '/bridge': { target: 'ws://127.0.0.1:47310', ws: true } } },
  builder: {
    // Vite's own default also builds an environment named ssr, which has no entry here.
    async buildApp(builder) {
      for (const name of ['client', 'main', 'preload']) {
        const environment = builder.environments[name];
        if (environment !== undefined) await builder.build(environment);
      }
    },
  },
  environments: {
    client: {
      build: { outDir: out('renderer'), emptyOutDir: true, target: 'chrome156', sourcemap: true },
    },
    main: {
      consumer: 'server',
      // Read as one file, what only computes takes a third less time to start than as some hundred small ones.
      resolve: { noExternal: ['zod', 'commander', 'cli-table3', 'crc', 'pure-rand'] },
      build: {
        outDir: out('main'),
        emptyOutDir: true,
        ssr: true,
        target: 'node24',
        sourcemap: true,
        rolldownOptions: {
          input: {
            main: path.join(root, 'electron/shell/electron/main.ts'),
            local: path.join(root, 'electron/shell/local/main.ts'),
            'command-line': path.join(root, 'electron/shell/command-line/main.ts'),
            'measure-worker': path.join(root, 'electron/bench/measure/measure-worker.ts'),
          },
          external: ['electron'],
          output: { format: 'es', entryFileNames: '[name].js' },
        },
      },
    },
    preload: {
      consumer: 'server',
      resolve: { noExternal: true },
      build: {
        outDir: out('preload'),
        emptyOutDir: true,
        ssr: true,
        target: 'node24',
        rolldownOptions: {
          input: { preload: path.join(root, 'electron/shell/electron/preload.ts') },
          external: ['electron'],
          output: { format: 'cjs', entryFileNames: '[name].cjs' },
        },
      },
    },
  },
  // Svelte components under test need Svelte's browser build.
  ...(process.env['VITEST'] === undefined ? {} : { resolve: { conditions: ['browser'] } }),
  test: {
    root,
    environment: 'node',
    projects: [
      {
        extends: true,
        // Pure computation leaves nothing behind: one worker runs many files, and each module is read once.
        test: { name: 'pure', include: PURE, isolate: false },
      },
      {
        extends: true,
        test: {
          name: 'machine',
          include: ['tests/**/*.test.ts'],
          exclude: [...PURE, 'tests/rig/**', 'tests/browser/**', 'node_modules/**'],
        },
      },
    ],
    // A busy machine must not fail a test: nothing here is judged by its speed.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Left to itself it keeps one core for a watcher, which is half of two.
    maxWorkers: '100%',
    coverage: { provider: 'v8', include: ['core/**', 'shared/**'], reporter: ['text', 'json-summary'] },
  },
});
