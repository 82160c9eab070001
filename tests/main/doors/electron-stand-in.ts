/**
 * Stands in for the `electron` module where its runtime is missing (tests only): it keeps what a door registers,
 * and passes messages between the two sides as copies, so that a wrong channel, a handler that is not there or an
 * error at start-up comes to light. Every part is held to Electron's own types.
 */
import { EventEmitter } from 'node:events';
import { existsSync } from 'node:fs';
import type * as Electron from 'electron';

type Handler = Parameters<Electron.IpcMain['handle']>[1];

/** What a test sets before the door starts, and reads afterwards. */
export const scene = {
  appPath: '',
  home: '',
  hasLock: true,
  /** The page that the next message comes from. */
  sender: 'bolt-and-baffle://window/',
  paths: new Map<string, string>(),
  handlers: new Map<string, Handler>(),
  exposed: new Map<string, unknown>(),
  schemes: [] as Electron.CustomScheme[],
  protocols: new Map<string, Parameters<Electron.Protocol['handle']>[1]>(),
  windows: [] as BrowserWindow[],
  menu: [] as Electron.MenuItemConstructorOptions[],
  errorBoxes: [] as string[],
  endings: [] as string[],
};

const events = new EventEmitter();

export const app = {
  whenReady: async () => {},
  getAppPath: () => scene.appPath,
  getPath: (name: string) => (name === 'home' ? scene.home : (scene.paths.get(name) ?? '')),
  setPath: (name: string, path: string) => {
    // As Electron does.
    if (!existsSync(path)) throw new Error(`Failed to set path '${name}': ${path} is not there`);
    scene.paths.set(name, path);
  },
  requestSingleInstanceLock: () => scene.hasLock,
  quit: () => {
    scene.endings.push('quit');
    events.emit('will-quit');
  },
  exit: (code?: number) => {
    scene.endings.push(`exit ${code}`);
  },
  showAboutPanel: () => {},
  on: (event: string, listener: (...values: unknown[]) => void) => {
    events.on(event, listener);
    return app as unknown as Electron.App;
  },
  emit: (event: string, ...values: unknown[]) => events.emit(event, ...values),
} satisfies Partial<Record<keyof Electron.App, unknown>> &
  Pick<
    Electron.App,
    'whenReady' | 'getAppPath' | 'requestSingleInstanceLock' | 'quit' | 'exit' | 'showAboutPanel'
  >;

export const ipcMain = {
  handle: (channel: string, handler: Handler) => {
    if (scene.handlers.has(channel))
      throw new Error(`Attempted to register a second handler for '${channel}'`);
    scene.handlers.set(channel, handler);
  },
} satisfies Pick<Electron.IpcMain, 'handle'>;

export const ipcRenderer = {
  invoke: async (channel: string, ...values: unknown[]) => {
    const handler = scene.handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    const event = { senderFrame: { url: scene.sender } } as Electron.IpcMainInvokeEvent;
    return structuredClone(await handler(event, ...structuredClone(values)));
  },
} satisfies Pick<Electron.IpcRenderer, 'invoke'>;

export const contextBridge = {
  exposeInMainWorld: (name: string, api: unknown) => {
    scene.exposed.set(name, api);
  },
} satisfies Pick<Electron.ContextBridge, 'exposeInMainWorld'>;

export const protocol = {
  registerSchemesAsPrivileged: (schemes: Electron.CustomScheme[]) => {
    scene.schemes.push(...schemes);
  },
  handle: (scheme, handler) => {
    scene.protocols.set(scheme, handler);
  },
} satisfies Pick<Electron.Protocol, 'registerSchemesAsPrivileged' | 'handle'>;

export const dialog = {
  showErrorBox: (title: string, content: string) => {
    scene.errorBoxes.push(`${title}\n${content}`);
  },
} satisfies Pick<Electron.Dialog, 'showErrorBox'>;

export const Menu = {
  buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]) =>
    template as unknown as Electron.Menu,
  setApplicationMenu: (menu: Electron.Menu | null) => {
    scene.menu = menu as unknown as Electron.MenuItemConstructorOptions[];
  },
} satisfies Pick<typeof Electron.Menu, 'setApplicationMenu'> & { buildFromTemplate: unknown };

/** A window that loads nothing; it remembers its options, and its web contents are a bare emitter. */
export class BrowserWindow extends EventEmitter {
  readonly options: Electron.BrowserWindowConstructorOptions;
  readonly webContents: WebContents;
  readonly did: string[] = [];

  constructor(options: Electron.BrowserWindowConstructorOptions) {
    super();
    this.options = options;
    this.webContents = new WebContents();
    scene.windows.push(this);
  }

  async loadURL(url: string): Promise<void> {
    this.did.push(`load ${url}`);
  }
  show(): void {
    this.did.push('show');
  }
  focus(): void {
    this.did.push('focus');
  }
  restore(): void {
    this.did.push('restore');
  }
  isMinimized(): boolean {
    return true;
  }
}

class WebContents extends EventEmitter {
  openHandler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0] | undefined;
  permissionHandler: Parameters<Electron.Session['setPermissionRequestHandler']>[0] | undefined;
  readonly session = {
    setPermissionRequestHandler: (handler: typeof this.permissionHandler) => {
      this.permissionHandler = handler;
    },
  };

  setWindowOpenHandler(handler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0]): void {
    this.openHandler = handler;
  }
}
