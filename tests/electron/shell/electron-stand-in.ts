/**
 * Stands in for the `electron` module in a plain Node process: keeps what the built shell asks for and lets a test play
 * the rest of Electron. It has only what the shell uses; asking for anything else fails as it would on a typing error.
 */
import { EventEmitter } from 'node:events';
import { tmpdir } from 'node:os';

export interface Handlers {
  permissionRequest?: (
    contents: unknown,
    permission: string,
    decide: (allowed: boolean) => void,
    details: { isMainFrame: boolean; requestingUrl: string },
  ) => void;
  permissionCheck?: (
    contents: unknown,
    permission: string,
    origin: string,
    details: { isMainFrame: boolean },
  ) => boolean;
  devicePermission?: () => boolean;
  beforeRequest?: (details: { url: string }, decide: (answer: { cancel: boolean }) => void) => void;
  protocol?: (request: Request) => Promise<Response>;
  windowOpen?: (details: { url: string }) => { action: string };
}

/** Everything the shell has asked for, in order. */
export const record = {
  order: [] as string[],
  schemes: [] as unknown[],
  windows: [] as BrowserWindow[],
  invokable: new Map<string, (event: unknown, ...args: unknown[]) => unknown>(),
  exposed: new Map<string, Record<string, (...args: never[]) => unknown>>(),
  handlers: {} as Handlers,
  menu: undefined as unknown,
  channels: [] as MessageChannelMain[],
  dialogs: [] as unknown[],
  /** What the user answers to the dialogues to come. */
  answers: { response: 0, save: { canceled: true, filePath: '' } },
  reloads: 0,
};

class App extends EventEmitter {
  readonly isPackaged = process.env['STAND_IN_PACKAGED'] === '1';
  enableSandbox(): void {
    record.order.push('enableSandbox');
  }
  requestSingleInstanceLock(): boolean {
    record.order.push('requestSingleInstanceLock');
    return process.env['STAND_IN_SECOND'] !== '1';
  }
  whenReady(): Promise<void> {
    record.order.push('whenReady');
    return Promise.resolve();
  }
  getPath(): string {
    return process.env['STAND_IN_FOLDER'] ?? tmpdir();
  }
  getVersion(): string {
    return '0.0.0';
  }
  quit(): void {
    record.order.push('quit');
    this.emit('before-quit', { preventDefault: () => record.order.push('quit prevented') });
  }
}

export class WebContents extends EventEmitter {
  readonly id: number;
  readonly sent: unknown[][] = [];
  constructor(id: number) {
    super();
    this.id = id;
  }
  forcefullyCrashRenderer(): void {
    this.emit('render-process-gone', {}, { reason: 'killed', exitCode: 9 });
  }
  reload(): void {
    record.reloads += 1;
  }
  setWindowOpenHandler(handler: Handlers['windowOpen']): void {
    if (handler !== undefined) record.handlers.windowOpen = handler;
  }
  isDestroyed(): boolean {
    return false;
  }
  send(...args: unknown[]): void {
    this.sent.push(args);
  }
  postMessage(...args: unknown[]): void {
    this.sent.push(args);
  }
}

export class BrowserWindow extends EventEmitter {
  readonly options: unknown;
  readonly webContents: WebContents;
  loaded: string | null = null;
  constructor(options: unknown) {
    super();
    this.options = options;
    this.webContents = new WebContents(record.windows.length + 1);
    record.windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  loadURL(url: string): Promise<void> {
    this.loaded = url;
    return Promise.resolve();
  }
  show(): void {
    record.order.push('show');
  }
  focus(): void {
    record.order.push('focus');
  }
  isMinimized(): boolean {
    return false;
  }
  isDestroyed(): boolean {
    return false;
  }
  getSize(): number[] {
    return [1000, 700];
  }
}

class Port extends EventEmitter {
  readonly posted: unknown[] = [];
  start(): void {
    record.order.push('port started');
  }
  postMessage(message: unknown): void {
    this.posted.push(message);
  }
  close(): void {
    this.emit('close');
  }
}

export class MessageChannelMain {
  readonly port1 = new Port();
  readonly port2 = new Port();
  constructor() {
    record.channels.push(this);
  }
}

export const app = new App();

export const ipcMain = Object.assign(new EventEmitter(), {
  handle(channel: string, handler: (event: unknown, ...args: unknown[]) => unknown): void {
    record.invokable.set(channel, handler);
  },
});

export const ipcRenderer = Object.assign(new EventEmitter(), {
  invoke: (...args: unknown[]): Promise<unknown> => Promise.resolve({ invoked: args }),
});

export const contextBridge = {
  exposeInMainWorld(name: string, api: Record<string, (...args: never[]) => unknown>): void {
    record.exposed.set(name, api);
  },
};

export const Menu = {
  setApplicationMenu(menu: unknown): void {
    record.order.push('menu');
    record.menu = menu;
  },
};

export const powerMonitor = new EventEmitter();

export const powerSaveBlocker = { start: (): number => 1, stop: (): boolean => true };

export const dialog = {
  showMessageBox(_window: unknown, options: unknown): Promise<{ response: number }> {
    record.dialogs.push(options);
    return Promise.resolve({ response: record.answers.response });
  },
  showSaveDialog(_window: unknown, options: unknown): Promise<{ canceled: boolean; filePath: string }> {
    record.dialogs.push(options);
    return Promise.resolve(record.answers.save);
  },
};

export const protocol = {
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    record.order.push('schemes');
    record.schemes.push(...schemes);
  },
  handle(_scheme: string, handler: Handlers['protocol']): void {
    if (handler !== undefined) record.handlers.protocol = handler;
  },
};

export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: (handler: Handlers['permissionRequest']) => keep({ permissionRequest: handler }),
    setPermissionCheckHandler: (handler: Handlers['permissionCheck']) => keep({ permissionCheck: handler }),
    setDevicePermissionHandler: (handler: Handlers['devicePermission']) => keep({ devicePermission: handler }),
    webRequest: { onBeforeRequest: (handler: Handlers['beforeRequest']) => keep({ beforeRequest: handler }) },
  }),
};

export const shell = {};

function keep(handlers: { [K in keyof Handlers]: Handlers[K] | undefined }): void {
  Object.assign(record.handlers, handlers);
}

export default { app, ipcMain, shell, ipcRenderer };
