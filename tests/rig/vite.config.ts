/** Bundles the guest's tests and the command line into plain files that need nothing but Node and node-hid. */
import path from 'node:path';
import { defineConfig } from 'vite';

const root = path.resolve(import.meta.dirname, '../..');

export default defineConfig({
  root,
  ssr: { noExternal: true, external: ['node-hid'] },
  build: {
    outDir: path.join(root, 'out/rig/bundle'),
    emptyOutDir: true,
    ssr: true,
    target: 'node24',
    minify: false,
    rolldownOptions: {
      input: {
        main: path.join(root, 'tests/rig/guest/main.ts'),
        'open-as-user': path.join(root, 'tests/rig/guest/open-as-user.ts'),
        'command-line': path.join(root, 'electron/shell/command-line/main.ts'),
        'measure-worker': path.join(root, 'electron/bench/measure/measure-worker.ts'),
        'virtual-pad': path.join(root, 'tests/rig/guest/virtual-pad.ts'),
      },
      external: ['node-hid', 'electron'],
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name].js' },
    },
  },
});
