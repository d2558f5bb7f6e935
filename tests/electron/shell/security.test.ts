/** Electron's security points (S1–S20, E1–E8 of the project's own list) as far as the sources alone can tell. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { calls, events } from '../../../shared/contract.ts';
import { CONTENT_SECURITY_POLICY } from '../../../electron/shell/content-policy.ts';
import { projectFile } from './built.ts';

interface Source {
  readonly name: string;
  readonly text: string;
}

function sources(...folders: string[]): Source[] {
  return folders.flatMap((folder) =>
    readdirSync(projectFile(folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(?:ts|svelte|html|css|js|cjs)$/u.test(entry.name))
      .map((entry) => path.join(entry.parentPath, entry.name))
      .map((file) => ({ name: path.relative(projectFile('.'), file), text: readFileSync(file, 'utf8') })),
  );
}

function holders(where: readonly Source[], pattern: RegExp): string[] {
  return where.filter(({ text }) => pattern.test(text)).map(({ name }) => name);
}

const own = sources('core', 'shared', 'electron', 'renderer');
const electronShell = sources('electron/shell/electron');

describe('security, read from the sources', () => {
  it('names no remote address (S1) and no file address (S18)', () => {
    const remote = own.flatMap(({ name, text }) =>
      [...text.matchAll(/\b(?:https?|wss?):\/\/[^\s'"`)]*/gu)]
        .map(([address]) => address)
        // The page's own host, and the name of a format rather than a place.
        .filter((address) => !/^(?:http|ws):\/\/(?:127\.0\.0\.1|\$\{)/u.test(address))
        .filter((address) => address !== 'http://www.w3.org/2000/svg')
        .map((address) => `${name}: ${address}`),
    );
    expect(remote).toEqual([]);
    expect(holders(own, /['"`]file:\/\//u)).toEqual([]);
  });

  it('switches nothing on that is off for a reason (S2, S3, S4, S6, S8, S9, S10)', () => {
    const weak = [
      /nodeIntegration\w*:\s*true/u,
      /contextIsolation:\s*false/u,
      /sandbox:\s*false/u,
      /--no-sandbox/u,
      /webSecurity:/u,
      /allowRunningInsecureContent/u,
      /experimentalFeatures/u,
      /enableBlinkFeatures/u,
      /commandLine\.appendSwitch/u,
    ];
    for (const pattern of weak) expect([String(pattern), holders(own, pattern)]).toEqual([String(pattern), []]);
  });

  it('has a policy without anything unsafe, closed by default (S7)', () => {
    const rules = new Map(
      CONTENT_SECURITY_POLICY.split('; ').map((rule) => {
        const [name = '', ...values] = rule.split(' ');
        return [name, values.join(' ')];
      }),
    );
    expect(rules.get('default-src')).toBe("'none'");
    for (const name of ['script-src', 'style-src', 'font-src', 'connect-src', 'worker-src'])
      expect(rules.get(name)).toBe("'self'");
    expect(rules.get('img-src')).toBe("'self' data:");
    for (const name of ['object-src', 'base-uri', 'form-action', 'frame-ancestors'])
      expect(rules.get(name)).toBe("'none'");
    expect(rules.size).toBe(11);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*|https?:/u);
  });

  it('writes no style attribute and no inline script, which the policy would stop (S7)', () => {
    const pages = own.filter(({ name }) => /^renderer\/.*\.(?:svelte|html)$/u.test(name));
    expect(holders(pages, /\sstyle="/u)).toEqual([]);
    expect(holders(pages, /\son[a-z]+="/u)).toEqual([]);
    expect(holders(pages, /<script(?![^>]*(?:\bsrc=|lang="ts"|\bmodule\b))[^>]*>/u)).toEqual([]);
    expect(holders(own, /\{@html|innerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function\(/u)).toEqual([]);
  });

  it('has no webview and no pop-up (S11, S12, S14)', () => {
    expect(holders(own, /<webview|allowpopups|webviewTag:\s*true/u)).toEqual([]);
  });

  it('opens no address outside (S15)', () => {
    expect(holders(own, /\bopenExternal\b/u)).toEqual([]);
  });

  it('runs on the major version of Electron that it is tried with (S16)', () => {
    const { devDependencies } = JSON.parse(readFileSync(projectFile('package.json'), 'utf8')) as {
      devDependencies: Record<string, string>;
    };
    expect(devDependencies['electron']).toMatch(/^45\.\d+\.\d+$/u);
  });

  it('lets only one file listen to the page, and only through the router (S17)', () => {
    expect(holders(electronShell, /\bipc(?:Main)?\.(?:handle|on)\w*\(/u)).toEqual([
      'electron/shell/electron/ipc-router.ts',
    ]);
    expect(holders(own, /\bipcMain\b/u).filter((name) => !name.startsWith('electron/shell/electron/'))).toEqual([]);
  });

  it('gives the page neither the channel nor a free choice of it (S20, E5)', () => {
    const preload = readFileSync(projectFile('electron/shell/electron/preload.ts'), 'utf8');
    expect(preload).not.toMatch(/sendSync|ipcRenderer\.send\b|require\(|process\./u);
    expect([...preload.matchAll(/invoke\((\w+)/gu)].map(([, channel]) => channel)).toEqual([
      'CALL_CHANNEL',
      'SAVE_CHANNEL',
      'SAMPLES_CHANNEL',
    ]);
    expect(holders(own, /sendSync|@electron\/remote/u)).toEqual([]);
  });

  it('keeps Electron to its own shell', () => {
    const outside = own.filter(({ name }) => !name.startsWith('electron/shell/electron/'));
    expect(holders(outside, /from 'electron(?:\/[^']*)?'/u)).toEqual([]);
  });

  it('never lets the page name a path or send raw reports (E6, E8)', () => {
    const requests = Object.values(calls).flatMap(({ request }) => Object.keys(request.shape));
    expect(requests.filter((key) => /path|file|folder|directory/iu.test(key))).toEqual([]);
    expect(Object.keys(calls).filter((name) => /output|feature|raw/iu.test(name))).toEqual([]);
    // A memory session is asked for by handles and words alone: addresses and bytes stay on the bench.
    const memory = Object.entries(calls).filter(([name]) => name.startsWith('memory.'));
    const asked = new Set(memory.flatMap(([, { request }]) => Object.keys(request.shape)));
    expect([...asked].toSorted()).toEqual(['accepts', 'journal', 'pad', 'token', 'wish', 'writing']);
    expect(Object.keys(events).length).toBeGreaterThan(0);
  });

  it('hides no warning (E7)', () => {
    const everything = [
      ...own,
      ...sources('build'),
      ...sources('tests').filter(({ name }) => !name.endsWith('security.test.ts')),
    ];
    expect(holders(everything, /ELECTRON_DISABLE_SECURITY_WARNINGS/u)).toEqual([]);
  });

  it('does not wait to be ready at the top level, where it would wait for ever', () => {
    expect(holders(electronShell, /^\s*await app\.whenReady/mu)).toEqual([]);
  });
});
