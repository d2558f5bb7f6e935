import path from 'node:path';
import { defineConfig } from '@playwright/test';
import { chromium } from './system-packages.js';

const root = path.resolve(import.meta.dirname, '..');

export default defineConfig({
  testDir: path.join(root, 'tests/browser'),
  outputDir: path.join(root, 'out/browser'),
  snapshotPathTemplate: path.join(root, 'tests/browser/snapshots/{arg}{ext}'),
  fullyParallel: false,
  // Each has a bench of its own.
  workers: 2,
  reporter: [['list'], ['json', { outputFile: path.join(root, 'out/results/browser.json') }]],
  forbidOnly: process.env['CI'] === 'true',
  // What takes seconds here takes minutes on a busy machine; only what hangs is a failure.
  timeout: 300_000,
  // A second try tells a fault that comes and goes from one that stays; both count as failed.
  retries: 1,
  failOnFlakyTests: true,
  expect: { timeout: 60_000, toHaveScreenshot: { animations: 'disabled', maxDiffPixelRatio: 0.001 } },
  use: {
    viewport: { width: 1280, height: 800 },
    launchOptions: {
      executablePath: chromium() ?? '/usr/bin/chromium-headless-shell',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--font-render-hinting=none',
      ],
    },
  },
});
