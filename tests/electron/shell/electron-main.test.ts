import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../../electron/shell/content-policy.ts';
import { ensureBuilt, projectFile } from './built.ts';
import { runNode, type Ran } from './run-node.ts';

interface Played {
  order: string[];
  quitting: string[];
  schemes: unknown[];
  menu: unknown;
  windows: number;
  window: { show: boolean; webPreferences: Record<string, unknown> };
  loaded: string;
  invokable: string[];
  listeners: string[];
  permissions: Record<string, unknown>;
  saving: Record<string, unknown>;
  broken: { reloads: number; waited: number; loadedAgain: number; messages: string[]; hello: unknown };
  cancelled: Record<string, boolean>;
  pages: Record<string, { status: number; policy: string | null; type: string | null }>;
  prevented: Record<string, boolean>;
  windowOpen: { action: string };
  answers: Record<string, unknown>;
}

const folder = mkdtempSync(path.join(tmpdir(), 'stickwright-electron-'));
const places = {
  HOME: folder,
  XDG_CONFIG_HOME: folder,
  XDG_DATA_HOME: folder,
  XDG_STATE_HOME: folder,
  STAND_IN_FOLDER: folder,
};

function play(env: Record<string, string> = {}): Promise<Ran> {
  return runNode([projectFile('tests/electron/shell/play-main.ts')], { env: { ...places, ...env } });
}

describe('the built Electron main process', () => {
  let played: Played;
  let ran: Ran;

  beforeAll(async () => {
    await ensureBuilt();
    ran = await play();
    played = JSON.parse(ran.stdout === '' ? '{}' : ran.stdout) as Played;
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('runs to its end without a word on standard error but for what was broken by the test', () => {
    expect(ran.stderr.split('\n').filter((line) => line !== '')).toHaveLength(played.broken.messages.length - 2);
    expect(ran.code).toBe(0);
  });

  it('turns the sandbox on, names its scheme and drops the menu before it waits to be ready (S4, S18)', () => {
    const ready = played.order.indexOf('whenReady');
    for (const step of ['enableSandbox', 'schemes', 'menu', 'requestSingleInstanceLock'])
      expect(played.order.indexOf(step)).toBeLessThan(ready);
    expect(played.order).toContain('enableSandbox');
    expect(played.menu).toBeNull();
    expect(played.schemes).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  it('opens one window, sandboxed and isolated, on its own origin (S1, S2, S3)', () => {
    expect(played.windows).toBe(1);
    expect(played.loaded).toBe('app://bench/');
    expect(played.window.show).toBe(false);
    expect(played.window.webPreferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
    });
    expect(played.window.webPreferences['preload']).toBe(projectFile('out/preload/preload.cjs'));
  });

  it('denies every permission and every device but the writing of text to the clipboard by its own page (S5)', () => {
    const denied = [false, false];
    expect(played.permissions).toEqual({
      hid: denied,
      fullscreen: denied,
      clipboardRead: denied,
      clipboardWrite: [true, true],
      clipboardOfOther: denied,
      clipboardOfFrame: denied,
      device: false,
    });
  });

  it('saves a file where the user says, whole or not at all, under a plain name (E6)', () => {
    const { saving } = played;
    expect(saving['offered']).toEqual([{ defaultPath: 'a-b-.csv' }]);
    expect(saving['cancelled']).toEqual({ ok: true, value: { saved: false } });
    expect(saving['none']).toEqual([]);
    expect(saving['saved']).toEqual({ ok: true, value: { saved: true } });
    expect(saving['text']).toBe('one,two\n');
    expect(saving['failed']).toMatchObject({ ok: false, problem: { code: 'file-missing' } });
    expect(saving['left']).toEqual(['chosen.csv']);
  });

  it('saves nothing for others, and nothing that is no file (S17)', () => {
    const { saving } = played;
    expect(saving['stranger']).toMatchObject({ ok: false, problem: { code: 'sender-refused' } });
    expect(saving['wrong']).toMatchObject([
      { problem: { code: 'save-invalid' } },
      { problem: { code: 'save-invalid' } },
    ]);
    expect(saving['dialogs']).toBe(2);
  });

  it('loads a broken window again, but not for ever, says so, and goes on', () => {
    const { reloads, waited, loadedAgain, messages, hello } = played.broken;
    expect(reloads).toBe(3);
    expect([waited, loadedAgain]).toEqual([0, 1]);
    expect(messages).toEqual([
      'The window broke and was loaded again.',
      'The window broke and was loaded again.',
      'The window broke and was loaded again.',
      'The window breaks again and again.',
      'The window breaks again and again.',
      'A part of the program broke.',
      'The window does not answer.',
      'The window does not answer.',
      'The program met an error of its own.',
      'The program met an error of its own.',
    ]);
    expect(hello).toMatchObject({ ok: true, value: { shell: 'electron' } });
  });

  it('notes what broke', () => {
    const log = readFileSync(path.join(folder, 'stickwright', 'faults.log'), 'utf8');
    for (const noted of [
      'window: the page is gone: crashed, exit code 9',
      'window: the page does not answer',
      'child process: GPU is gone: killed, exit code 15',
      'main process: Error: thrown by a test',
      'main process: Error: rejected by a test',
    ])
      expect(log).toContain(noted);
    expect(log).not.toContain('clean-exit');
  });

  it('cancels every request but those of the app itself (E1)', () => {
    expect(played.cancelled).toEqual({
      'https://bench.example/x': true,
      'http://127.0.0.1/': true,
      'file:///etc/passwd': true,
      'app://other/': true,
      'app://bench/index.html': false,
      'ws://127.0.0.1/': true,
      'devtools://devtools/x': false,
    });
  });

  it('answers with the policy on every response, found or not (S7)', () => {
    expect(played.pages['root']).toEqual({
      status: 200,
      policy: CONTENT_SECURITY_POLICY,
      type: 'text/html; charset=utf-8',
    });
    for (const page of Object.values(played.pages)) expect(page.policy).toBe(CONTENT_SECURITY_POLICY);
  });

  it('finds nothing outside of the page folder, however it is spelled (S18)', () => {
    for (const [name, page] of Object.entries(played.pages))
      if (name !== 'root') expect([name, page.status]).toEqual([name, 404]);
    expect(Object.keys(played.pages)).toHaveLength(9);
  });

  it('stays on its page and opens no window and no webview (S12, S13, S14)', () => {
    expect(played.prevented).toEqual({ away: true, redirect: true, frame: true, own: false, webview: true });
    expect(played.windowOpen).toEqual({ action: 'deny' });
  });

  it('has one way in for calls, one for the sample port and one for saving, none of them synchronous (S17, E5)', () => {
    expect(played.invokable.toSorted()).toEqual(['bench.call', 'bench.samples', 'bench.save']);
    expect(played.listeners).toEqual([]);
  });

  it('answers its own window and nobody else (S17)', () => {
    const { hello, otherWindow, otherOrigin, lookalike, nestedFrame, goneFrame } = played.answers;
    expect(hello).toMatchObject({ ok: true, value: { shell: 'electron' } });
    for (const refused of [otherWindow, otherOrigin, lookalike, nestedFrame, goneFrame])
      expect(refused).toMatchObject({ ok: false, problem: { code: 'sender-refused' } });
    expect(played.answers['channelsForStranger']).toBe(0);
  });

  it('checks every request at run time (S17)', () => {
    expect(played.answers['unknownCall']).toMatchObject({ ok: false, problem: { code: 'call-unknown' } });
    expect(played.answers['inherited']).toMatchObject({ ok: false, problem: { code: 'call-unknown' } });
    expect(played.answers['badRequest']).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
  });

  it('streams a simulated pad through a port, within the credit that the page gives', () => {
    expect(played.answers['listed']).toMatchObject({ ok: true });
    expect(played.answers['opened']).toMatchObject({ ok: true, value: { identity: { transport: 'simulated' } } });
    expect(played.answers['portHandedOver']).toBe(true);
    const batches = played.answers['batches'] as { withoutCredit: number; withCredit: number; exact: boolean };
    expect(batches.withoutCredit).toBe(8);
    expect(batches.withCredit).toBeGreaterThan(8);
    expect(batches.withCredit).toBeLessThanOrEqual(11);
    expect(batches.exact).toBe(true);
    expect(played.answers['events']).toContain('pad.health');
  });

  it('closes its pads before the machine sleeps', () => {
    expect(played.answers['afterSuspend']).toEqual([false]);
  });

  it('keeps the size that its window had, and takes none that no screen could show', async () => {
    const kept = await readFile(path.join(folder, 'stickwright/window.json'), 'utf8');
    expect(JSON.parse(kept)).toEqual({ width: 1000, height: 700 });
    await writeFile(path.join(folder, 'stickwright/window.json'), '{"width":-5,"height":1e999}');
    const again = JSON.parse((await play()).stdout) as Played;
    expect(again.window).toMatchObject({ width: 1280, height: 860 });
  });

  it('closes the bench before it quits, however many signals ask for it', () => {
    expect(played.quitting).toEqual(['quit', 'quit prevented', 'quit', 'quit prevented', 'quit']);
  });

  it('opens nothing where a first one runs already (E2)', async () => {
    const second = JSON.parse((await play({ STAND_IN_SECOND: '1' })).stdout) as Played;
    expect(second.windows).toBe(0);
    expect(second.order).toContain('quit');
    expect(second.invokable).toEqual([]);
  });

  it('has no developer tools when packaged (E3)', async () => {
    const packaged = JSON.parse((await play({ STAND_IN_PACKAGED: '1' })).stdout) as Played;
    expect(packaged.window.webPreferences['devTools']).toBe(false);
    expect(packaged.cancelled['devtools://devtools/x']).toBe(true);
  });
});
