/** Loads the built main process over the stand-in, plays what Electron and a page would do, and prints what came of it. */
import './replace-electron.ts';
import { playBreaking, playSaving } from './play-window.ts';
import { ipcMain, powerMonitor, record, type WebContents } from './electron-stand-in.ts';

const APP = 'app://bench';
const built = new URL('../../../out/main/main.js', import.meta.url).href;
await import(built);
await new Promise((resolve) => setTimeout(resolve, 300));

const { handlers } = record;
const window = record.windows[0];

/** Asked for and checked, by the page or by somebody else. */
async function permission(name: string, url = `${APP}/`, isMainFrame = true): Promise<boolean[]> {
  const asked = await new Promise<boolean>((resolve) =>
    handlers.permissionRequest?.({}, name, resolve, { isMainFrame, requestingUrl: url }),
  );
  return [asked, handlers.permissionCheck?.({}, name, url, { isMainFrame }) ?? false];
}

function cancelled(url: string): boolean | undefined {
  let answer: boolean | undefined;
  handlers.beforeRequest?.({ url }, ({ cancel }) => (answer = cancel));
  return answer;
}

async function fetched(
  url: string,
  method = 'GET',
): Promise<{ status: number; policy: string | null; type: string | null }> {
  const response = await handlers.protocol?.(new Request(url, { method }));
  return {
    status: response?.status ?? 0,
    policy: response?.headers.get('content-security-policy') ?? null,
    type: response?.headers.get('content-type') ?? null,
  };
}

function prevented(event: string, url: string, contents: WebContents | undefined = window?.webContents): boolean {
  let stopped = false;
  contents?.emit(event, { url, preventDefault: () => (stopped = true) });
  return stopped;
}

function call(name: string, request: unknown, sender: { id?: number; url?: string; nested?: boolean } = {}): unknown {
  const url = sender.url ?? `${APP}/`;
  const event = {
    sender: { id: sender.id ?? window?.webContents.id },
    senderFrame: url === '' ? null : { url, parent: sender.nested === true ? {} : null },
  };
  return record.invokable.get('bench.call')?.(event, name, request);
}

let answers: Record<string, unknown> = {};
if (window !== undefined) {
  const outer = { sender: window.webContents, senderFrame: { url: `${APP}/`, parent: null } };
  await record.invokable.get('bench.samples')?.({
    ...outer,
    senderFrame: { url: 'https://bench.example/', parent: null },
  });
  const channelsForStranger = record.channels.length;
  await record.invokable.get('bench.samples')?.(outer);
  const list = async (): Promise<{ value: { pad: string; open: boolean }[] }> =>
    (await call('pads.list', {})) as { value: { pad: string; open: boolean }[] };
  // The pad in hand is opened by the bench itself, on a busy machine a while after the window stands.
  for (let look = 0; look < 200 && (await list()).value[0]?.open !== true; look += 1)
    await new Promise((resolve) => setTimeout(resolve, 50));
  const listed = await list();
  const pad = listed.value[0]?.pad;
  const opened = await call('pads.open', { pad });
  const port = record.channels[0]?.port1;
  await new Promise((resolve) => setTimeout(resolve, 600));
  const withoutCredit = port?.posted.length;
  port?.emit('message', {});
  port?.emit('message', {});
  await new Promise((resolve) => setTimeout(resolve, 300));
  const withCredit = port?.posted.length;
  const batch = port?.posted[0];
  window.emit('close');
  powerMonitor.emit('suspend');
  await new Promise((resolve) => setTimeout(resolve, 300));
  const afterSuspend = await list();
  answers = {
    hello: await call('bench.hello', {}),
    listed,
    opened,
    unknownCall: await call('bench.destroy', {}),
    inherited: await call('__proto__', {}),
    badRequest: await call('pads.open', { pad: 7 }),
    otherWindow: await call('bench.hello', {}, { id: 99 }),
    otherOrigin: await call('bench.hello', {}, { url: 'https://bench.example/' }),
    lookalike: await call('bench.hello', {}, { url: 'app://bench.example/' }),
    nestedFrame: await call('bench.hello', {}, { nested: true }),
    goneFrame: await call('bench.hello', {}, { url: '' }),
    channelsForStranger,
    portHandedOver: window.webContents.sent.some((sent) => sent[0] === 'bench.samples'),
    batches: {
      withoutCredit,
      withCredit,
      exact: batch instanceof Uint8Array && batch.byteLength === batch.buffer.byteLength,
    },
    events: [...new Set(window.webContents.sent.map((sent) => String(sent[1])))],
    afterSuspend: afterSuspend.value.map(({ open }) => open),
  };
}

const saving = window === undefined ? {} : await playSaving(window);
const broken = window === undefined ? {} : await playBreaking(window);

const result = {
  saving,
  broken,
  order: [...record.order],
  schemes: record.schemes,
  menu: record.menu,
  windows: record.windows.length,
  window: window?.options,
  loaded: window?.loaded,
  invokable: [...record.invokable.keys()],
  listeners: ipcMain.eventNames(),
  permissions:
    window === undefined
      ? {}
      : {
          hid: await permission('hid'),
          fullscreen: await permission('fullscreen'),
          clipboardRead: await permission('clipboard-read'),
          clipboardWrite: await permission('clipboard-sanitized-write'),
          clipboardOfOther: await permission('clipboard-sanitized-write', 'https://bench.example/'),
          clipboardOfFrame: await permission('clipboard-sanitized-write', `${APP}/`, false),
          device: handlers.devicePermission?.(),
        },
  cancelled: Object.fromEntries(
    [
      'https://bench.example/x',
      'http://127.0.0.1/',
      'file:///etc/passwd',
      'app://other/',
      `${APP}/index.html`,
      'ws://127.0.0.1/',
      'devtools://devtools/x',
    ].map((url) => [url, cancelled(url)]),
  ),
  pages:
    window === undefined
      ? {}
      : {
          root: await fetched(`${APP}/`),
          missing: await fetched(`${APP}/nothing.js`),
          up: await fetched(`${APP}/..%2f..%2fpackage.json`),
          upPlain: await fetched(`${APP}/../../package.json`),
          upBack: await fetched(`${APP}/..%5c..%5cpackage.json`),
          nul: await fetched(`${APP}/index.html%00.js`),
          broken: await fetched(`${APP}/%E0%A4%A`),
          otherHost: await fetched('app://other/index.html'),
          posted: await fetched(`${APP}/`, 'POST'),
        },
  prevented: {
    away: prevented('will-navigate', 'https://bench.example/'),
    redirect: prevented('will-redirect', 'https://bench.example/'),
    frame: prevented('will-frame-navigate', 'about:blank'),
    own: prevented('will-navigate', `${APP}/`),
    webview: prevented('will-attach-webview', ''),
  },
  windowOpen: handlers.windowOpen?.({ url: `${APP}/` }),
  answers,
};

process.emit('SIGHUP');
process.emit('SIGTERM');
await new Promise((resolve) => setTimeout(resolve, 300));
process.stdout.write(JSON.stringify({ ...result, quitting: record.order.slice(result.order.length) }));
process.exit(0);
