/** What every run of `npm run mutate` has in common; `mutate.js` adds the folder of core and its tests. */
export default {
  plugins: ['@stryker-mutator/vitest-runner'],
  testRunner: 'vitest',
  vitest: { configFile: 'build/vite.config.ts', related: false },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  // A sentence may be worded another way: what is said is tested where the words decide something.
  mutator: { excludedMutations: ['StringLiteral'] },
  incremental: true,
  // On a busy machine slowness is no proof that a mutant hangs.
  timeoutMS: 60_000,
  tempDirName: 'out/mutation/sandbox',
  cleanTempDir: 'always',
  ignorePatterns: ['out', 'coverage', 'tests/rig', 'tests/browser'],
  reporters: ['progress-append-only'],
  allowConsoleColors: false,
  logLevel: 'warn',
  warnings: { slow: false },
};
