/** Hints that device nodes came or went: on Linux the folder /dev tells; elsewhere nobody does. */
import { watch } from 'node:fs';
import type { NodeWatch } from './watch-pads.ts';

export function watchNodes(platform: NodeJS.Platform, folder = '/dev'): NodeWatch {
  return (hear) => {
    if (platform !== 'linux') return () => undefined;
    try {
      const watcher = watch(folder, { persistent: false }, (_, name) => {
        if (name?.startsWith('hidraw') === true) hear();
      });
      watcher.on('error', () => watcher.close());
      return () => watcher.close();
    } catch {
      // A hint only, e.g. where the system has no watches left: the regular look finds everything all the same.
      return () => undefined;
    }
  };
}
