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
  hasKeyStore: true,
  isPackaged: false,
  /** The page that the next message comes from, and whether it is at the top of the window. */
  sender: 'bolt-and-baffle://window/',
  isFromTop: true,
  switches: new Map<string, string>(),
  isSandboxed: false,
  paths: new Map<string, string>(),
  handlers: new Map<string, Handler>(),
  exposed: new Map<string, unknown>(),
  schemes: [] as Electron.CustomScheme[],
  protocols: new Map<string, Parameters<Electron.Protocol['handle']>[1]>(),
  windows: [] as BrowserWindow[],
  menu: [] as Electron.MenuItemConstructorOptions[],
  errorBoxes: [] as string[],
  endings: [] as string[],
  /** Words of each start asked for after the end of this one. */
  restarts: [] as (readonly string[])[],
  /** What the person chooses when asked for a file; nothing for "Cancel". */
  chosenFiles: [] as string[],
};

const events = new EventEmitter();

export const app = {
  whenReady: async () => {},
  get isPackaged() {
    return scene.isPackaged;
  },
  enableSandbox: () => {
    scene.isSandboxed = true;
  },
  commandLine: {
    appendSwitch: (name: string, value = '') => void scene.switches.set(name, value),
    removeSwitch: (name: string) => void scene.switches.delete(name),
  },
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
  getVersion: () => '7.8.9',
  getLocale: () => 'en-IE',
  relaunch: (options?: Electron.RelaunchOptions) => {
    scene.restarts.push(options?.args ?? []);
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
    | 'whenReady'
    | 'isPackaged'
    | 'enableSandbox'
    | 'getAppPath'
    | 'requestSingleInstanceLock'
    | 'quit'
    | 'getVersion'
    | 'getLocale'
    | 'relaunch'
    | 'exit'
    | 'showAboutPanel'
  > & { commandLine: Pick<Electron.CommandLine, 'appendSwitch' | 'removeSwitch'> };

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
    const top = scene.windows.at(-1)?.webContents.mainFrame ?? { url: '' };
    top.url = scene.sender;
    const senderFrame = scene.isFromTop ? top : { url: scene.sender };
    const event = { senderFrame } as Electron.IpcMainInvokeEvent;
    return structuredClone(await handler(event, ...structuredClone(values)));
  },
  on(channel: string, listener: (event: Electron.IpcRendererEvent, ...values: unknown[]) => void) {
    events.on(channel, listener);
    return this as unknown as Electron.IpcRenderer;
  },
} satisfies Pick<Electron.IpcRenderer, 'invoke' | 'on'>;

/** A key store that turns texts round; none where the scene says so. */
export const safeStorage = {
  isEncryptionAvailable: () => scene.hasKeyStore,
  getSelectedStorageBackend: () => 'gnome_libsecret',
  encryptString: (text: string) => Buffer.from([...text].reverse().join('')),
  decryptString: (sealed: Buffer) => [...sealed.toString()].reverse().join(''),
} satisfies Pick<
  Electron.SafeStorage,
  'isEncryptionAvailable' | 'getSelectedStorageBackend' | 'encryptString' | 'decryptString'
>;

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
  showOpenDialog: async (_options: Electron.OpenDialogOptions) => ({
    canceled: scene.chosenFiles.length === 0,
    filePaths: scene.chosenFiles,
  }),
} satisfies Pick<Electron.Dialog, 'showErrorBox'> & { showOpenDialog: unknown };

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
    events.emit('web-contents-created', {}, this.webContents);
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
  readonly mainFrame = { url: '' };
  openHandler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0] | undefined;

  setWindowOpenHandler(handler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0]): void {
    this.openHandler = handler;
  }
  /** To the page, which hears it in its preload. */
  send(channel: string, ...values: unknown[]): void {
    events.emit(channel, {}, ...values);
  }
}

type Guards = Pick<
  Electron.Session,
  'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'
>;

/** What was registered with the session of the window. */
export const registered = {
  request: null as Parameters<Guards['setPermissionRequestHandler']>[0],
  check: null as Parameters<Guards['setPermissionCheckHandler']>[0],
  device: null as Parameters<Guards['setDevicePermissionHandler']>[0],
  beforeRequest: null as Parameters<Electron.WebRequest['onBeforeRequest']>[0] | null,
};

const defaultSession = {
  setPermissionRequestHandler: (handler) => {
    registered.request = handler;
  },
  setPermissionCheckHandler: (handler) => {
    registered.check = handler;
  },
  setDevicePermissionHandler: (handler) => {
    registered.device = handler;
  },
  webRequest: {
    onBeforeRequest: (listener: typeof registered.beforeRequest) => {
      registered.beforeRequest = listener;
    },
  },
} satisfies Guards & { webRequest: unknown };

export const session = { defaultSession };
