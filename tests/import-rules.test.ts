/** Plants one wrong import for each import rule in a house of its own and lets the rules find it. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');
const PROGRAM = path.join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
const CONFIG = path.join(root, 'build/depcruise.config.cjs');

interface Rules {
  readonly forbidden: readonly { readonly name: string }[];
}

interface Found {
  readonly summary: {
    readonly violations: readonly {
      readonly from: string;
      readonly to: string;
      readonly rule: { readonly name: string };
    }[];
  };
}

/** Each rule with a file and what it must not import. What is written `node:` is a module of Node, a bare word a package. */
const PLANTS: Readonly<Record<string, readonly [from: string, to: string]>> = {
  'core-numeric-imports-no-later-step': ['core/numeric/a.ts', 'core/geometry/z.ts'],
  'core-geometry-imports-no-later-step': ['core/geometry/a.ts', 'core/hid/z.ts'],
  'core-hid-imports-no-later-step': ['core/hid/a.ts', 'core/pad/z.ts'],
  'core-pad-imports-no-later-step': ['core/pad/a.ts', 'core/log/z.ts'],
  'core-log-imports-no-later-step': ['core/log/a.ts', 'core/capture/z.ts'],
  'core-capture-imports-no-later-step': ['core/capture/a.ts', 'core/mapping/z.ts'],
  'core-mapping-imports-no-later-step': ['core/mapping/a.ts', 'core/measure/z.ts'],
  'core-measure-imports-no-later-step': ['core/measure/a.ts', 'core/proposal/z.ts'],
  'core-proposal-imports-no-later-step': ['core/proposal/a.ts', 'core/zones/z.ts'],
  'core-zones-imports-no-later-step': ['core/zones/a.ts', 'core/findings/z.ts'],
  'core-findings-imports-no-later-step': ['core/findings/a.ts', 'core/image/z.ts'],
  'core-image-imports-no-later-step': ['core/image/a.ts', 'core/simulate/z.ts'],
  'evidence-knows-no-guide': ['core/capture/evidence/a.ts', 'core/capture/guide/z.ts'],
  'the-simulation-shares-no-code-with-the-analysis': ['core/simulate/a.ts', 'core/geometry/y.ts'],
  'core-is-pure': ['core/numeric/b.ts', 'shared/z.ts'],
  'shared-is-schemas': ['shared/a.ts', 'electron/store/z.ts'],
  'screen-kit-imports-only-rooms-below': ['renderer/kit/a.ts', 'renderer/frame/z.ts'],
  'screen-bench-imports-only-rooms-below': ['renderer/bench/a.ts', 'renderer/frame/z.ts'],
  'screen-frame-imports-only-rooms-below': ['renderer/frame/a.ts', 'renderer/bench/z.ts'],
  'screen-pads-imports-only-rooms-below': ['renderer/pads/a.ts', 'renderer/surveys/z.ts'],
  'screen-surveys-imports-only-rooms-below': ['renderer/surveys/a.ts', 'renderer/stick/z.ts'],
  'screen-stick-imports-only-rooms-below': ['renderer/stick/a.ts', 'renderer/surveys/z.ts'],
  'screen-findings-imports-only-rooms-below': ['renderer/findings/a.ts', 'renderer/pads/z.ts'],
  'screen-chain-imports-only-rooms-below': ['renderer/chain/a.ts', 'renderer/findings/z.ts'],
  'screen-memory-imports-only-rooms-below': ['renderer/memory/a.ts', 'renderer/chain/z.ts'],
  'screen-workbench-imports-only-rooms-below': ['renderer/workbench/a.ts', 'renderer/bench/z.ts'],
  'service-time-imports-only-rooms-below': ['electron/bench/time/a.ts', 'electron/bench/calls/z.ts'],
  'service-calls-imports-only-rooms-below': ['electron/bench/calls/a.ts', 'electron/bench/time/z.ts'],
  'service-pads-imports-only-rooms-below': ['electron/bench/pads/a.ts', 'electron/bench/calls/z.ts'],
  'service-measure-imports-only-rooms-below': ['electron/bench/measure/a.ts', 'electron/bench/pads/z.ts'],
  'service-surveys-imports-only-rooms-below': ['electron/bench/surveys/a.ts', 'electron/bench/memory/z.ts'],
  'service-memory-imports-only-rooms-below': ['electron/bench/memory/a.ts', 'electron/bench/surveys/z.ts'],
  'only-the-hid-transport-imports-node-hid': ['electron/transport/a.ts', 'node-hid'],
  'only-the-electron-shell-imports-electron': ['electron/shell/local/a.ts', 'electron'],
  'transport-stands-on-core-and-store': ['electron/transport/b.ts', 'electron/bench/pads/z.ts'],
  'bench-knows-no-transport': ['electron/bench/pads/b.ts', 'electron/transport/z.ts'],
  'store-stands-on-core-and-shared': ['electron/store/a.ts', 'electron/transport/z.ts'],
  'shells-are-outermost': ['electron/bench/b.ts', 'electron/shell/z.ts'],
  'shells-call-the-bench': ['electron/shell/electron/a.ts', 'electron/bench/surveys/z.ts'],
  'commands-call-the-bench': ['electron/shell/command-line/a.ts', 'electron/bench/surveys/z.ts'],
  'memory-commands-have-no-other-way': [
    'electron/shell/command-line/memory-a.ts',
    'electron/bench/surveys/one-survey.ts',
  ],
  'renderer-not-electron': ['renderer/a.ts', 'electron/shell/z.ts'],
  'electron-not-renderer': ['electron/shell/b.ts', 'renderer/z.ts'],
  'no-node-builtins-in-renderer': ['renderer/b.ts', 'node:fs'],
  'no-cycles': ['renderer/c.ts', 'renderer/c.ts'],
  'no-unresolved': ['renderer/d.ts', 'renderer/missing.ts'],
};

/** What a file may import though it stands near what it may not: of these no rule may speak. */
const ALLOWED: readonly (readonly [from: string, to: string])[] = [
  ['electron/transport/c.ts', 'electron/bench/pads/transport.ts'],
  ['electron/transport/node-hid.ts', 'node-hid'],
  ['electron/store/b.ts', 'electron/bench/pads/pad-lock-port.ts'],
  ['electron/shell/electron/b.ts', 'electron'],
  ['electron/shell/electron/c.ts', 'electron/bench/bench.ts'],
  ['electron/shell/command-line/b.ts', 'electron/bench/surveys/one-survey.ts'],
  ['electron/bench/surveys/b.ts', 'electron/bench/pads/z.ts'],
  ['renderer/workbench/b.ts', 'renderer/stick/z.ts'],
];

const house = mkdtempSync(path.join(tmpdir(), 'stickwright-rules-'));
afterAll(() => rmSync(house, { recursive: true, force: true }));

function put(file: string, text: string): void {
  mkdirSync(path.dirname(path.join(house, file)), { recursive: true });
  writeFileSync(path.join(house, file), text);
}

function plant([from, to]: readonly [from: string, to: string]): void {
  const isFile = to.endsWith('.ts');
  const way = path.relative(path.dirname(from), to);
  const name = isFile ? (way.startsWith('.') ? way : `./${way}`) : to;
  put(from, `import { one } from '${name}';\nexport const other = one;\n`);
  if (isFile && to !== from && !to.includes('missing')) put(to, 'export const one = 1;\n');
  if (isFile || to.startsWith('node:')) return;
  put(`node_modules/${to}/package.json`, JSON.stringify({ name: to, main: 'index.js' }));
  put(`node_modules/${to}/index.js`, 'exports.one = 1;\n');
}

/** Rule and file of everything that the rules of the project find in the house. */
function violations(): string[] {
  const { stdout } = spawnSync(
    process.execPath,
    [PROGRAM, '--config', CONFIG, '--output-type', 'json', 'core', 'shared', 'electron', 'renderer'],
    { cwd: house, encoding: 'utf8' },
  );
  const found = JSON.parse(stdout) as Found;
  return found.summary.violations.map(({ rule, from }) => `${rule.name}: ${from}`);
}

describe('the import rules', () => {
  it('each find the wrong import that was planted for it, and speak of none that is right', () => {
    put('tsconfig.json', '{}');
    put('package.json', JSON.stringify({ dependencies: { 'node-hid': '1', electron: '1' } }));
    for (const pair of [...Object.values(PLANTS), ...ALLOWED]) plant(pair);
    const found = violations();
    const planted = Object.entries(PLANTS).map(([rule, [from]]) => `${rule}: ${from}`);
    expect(planted.filter((one) => !found.includes(one))).toEqual([]);
    const wrong = new Set(Object.values(PLANTS).map(([from]) => from));
    expect(found.filter((one) => !wrong.has(one.split(': ')[1] ?? ''))).toEqual([]);
  });

  it('are all planted for', async () => {
    const { default: rules } = (await import(CONFIG)) as { default: Rules };
    expect(Object.keys(PLANTS).toSorted()).toEqual(rules.forbidden.map(({ name }) => name).toSorted());
  });
});
