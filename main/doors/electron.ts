/**
 * The Electron door: one window over the built renderer, one channel for each call of the contract. It carries
 * calls and decides nothing about them. The window has no Node, runs in the sandbox, sees only the app's own
 * protocol, and can neither navigate away nor open another window.
 */
import { say } from '../../shared-core/wording/say.ts';
import { speakAtHome } from '../services/calls/speaking.ts';
import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  type MenuItemConstructorOptions,
  protocol,
  safeStorage,
  session,
} from 'electron';
import { callNames } from '../../shared-core/contract/contract.ts';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { chosenAddress, type Sealing } from '../database/chosen-address.ts';
import { askedDataFile } from '../database/file/data-file.ts';
import { openServicesAt } from '../services/calls/services.ts';
import { askedWorkshop } from './asked-workshop.ts';
import { guardContents, guardSession, pageAddress, refuseStrangers, scheme } from './electron-guard.ts';
import { openedFile, startOn, workshopEnding } from './opened-file.ts';
import { openOwnFolder } from './own-folder.ts';
import { staticAnswer } from './static.ts';

/** Tells the launcher that no other door would do better. */
const dataFileRefused = 3;

const rendererDir = join(app.getAppPath(), 'out', 'renderer');
const preload = join(app.getAppPath(), 'out', 'preload', 'preload.cjs');
const asked = askedDataFile(process.argv) ?? (app.isPackaged ? openedFile(process.argv) : undefined);
const files = askedWorkshop(asked, app.getPath('home'));

protocol.registerSchemesAsPrivileged([
  { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.enableSandbox();
// No name of any host is ever asked for.
app.commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
if (app.isPackaged) {
  // The page of an installed app is nobody's to look into; the fuses see to Node's own switches.
  for (const name of ['remote-debugging-port', 'remote-debugging-pipe']) app.commandLine.removeSwitch(name);
}
app.on('web-contents-created', (_event, contents) => guardContents(contents));
// Two windows over one data file would show each other's past; over two files each has its own lock and profile.
openOwnFolder(files.usualFolder);
const profile = join(files.usualFolder, 'windows', fileMark(files.dataFile));
mkdirSync(profile, { recursive: true });
app.setPath('userData', profile);

let window: BrowserWindow | undefined;

if (app.requestSingleInstanceLock()) {
  app.on('second-instance', showWindow);
  // How macOS says that a file was double clicked, at the start or later.
  app.on('open-file', (event, file) => {
    event.preventDefault();
    openOther(file);
  });
  app.on('window-all-closed', () => app.quit());
  app.whenReady().then(start).catch(endAtOnce);
} else {
  app.quit();
}

async function start(): Promise<void> {
  speakAtHome(app.getLocale());
  const { localFile, demoFile } = files;
  const runsOn = (['electron', 'chrome', 'node'] as const).map((part) => ({
    name: { electron: 'Electron', chrome: 'Chromium', node: 'Node' }[part],
    version: process.versions[part] ?? '',
  }));
  const program = { version: app.getVersion(), runsOn: runsOn.filter(({ version }) => version !== '') };
  const chosen = chosenAddress(files.usualFolder, keyStore());
  const dataFile = chosen.withPassword(files.dataFile, process.env);
  const opened = await openServicesAt({ dataFile, localFile, demoFile, program, chosen, mayOpenLater: true });
  if (!opened.ok) {
    giveUp(opened.problems.map(problemSentence).join('\n'));
    return;
  }
  const services = opened.value;
  const note = (error: unknown) => services.noteFailure('the program', error);
  process.on('uncaughtExceptionMonitor', note);
  app.on('will-quit', () => {
    process.off('uncaughtExceptionMonitor', note);
    void services.close();
  });
  services.onChangeElsewhere(() => window?.webContents.send('bolt-change'));
  for (const call of callNames) {
    ipcMain.handle(`bolt:${call}`, (event, workshop: unknown, input: unknown, language?: unknown) => {
      refuseStrangers(event, window?.webContents);
      return services.answer({ call, workshop, input, ...(language !== undefined && { language }) });
    });
  }
  protocol.handle(scheme, async (request) => {
    const url = new URL(request.url);
    if (url.host !== 'window') return new Response('Not here.', { status: 404 });
    const { status, headers, body } = await staticAnswer(rendererDir, url.pathname);
    return new Response(body, { status, headers });
  });
  guardSession(session.defaultSession, app.isPackaged);
  Menu.setApplicationMenu(Menu.buildFromTemplate(menu()));
  showWindow();
  app.on('activate', showWindow);
}

/** The key store of the system; null where there is none, or only one that anybody can open. To be asked once the app is ready. */
function keyStore(): Sealing | null {
  const isPlain = process.platform === 'linux' && safeStorage.getSelectedStorageBackend() === 'basic_text';
  if (!safeStorage.isEncryptionAvailable() || isPlain) return null;
  return {
    seal: (text) => safeStorage.encryptString(text).toString('base64'),
    unseal: (sealed) => safeStorage.decryptString(Buffer.from(sealed, 'base64')),
  };
}

/** Without a window an error would leave the program running unseen. */
function endAtOnce(error: unknown): void {
  console.error(error);
  app.exit(1);
}

function giveUp(why: string): void {
  console.error(why);
  dialog.showErrorBox(say('electron.the-workshop-cannot-be-opened'), why);
  app.exit(dataFileRefused);
}

function showWindow(): void {
  if (window !== undefined) {
    if (window.isMinimized()) window.restore();
    window.focus();
    return;
  }
  window = new BrowserWindow({
    width: 1360,
    height: 900,
    minWidth: 720,
    minHeight: 520,
    show: false,
    title: 'Bolt & Baffle',
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      devTools: !app.isPackaged,
      // Its dictionaries would come from the network.
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => window?.show());
  window.on('closed', () => {
    window = undefined;
  });
  void window.loadURL(pageAddress);
}

/** Everything is kept as it is typed, so another workshop is another start. */
function openOther(file: string): void {
  if (resolve(file) === files.dataFile) {
    showWindow();
    return;
  }
  app.relaunch({ args: startOn(resolve(file), app.isPackaged, app.getAppPath()) });
  app.quit();
}

async function askWhichToOpen(): Promise<void> {
  const chosen = await dialog.showOpenDialog({
    title: say('electron.open-a-workshop'),
    defaultPath: files.folder,
    properties: ['openFile'],
    filters: [{ name: say('electron.workshops'), extensions: [workshopEnding, 'sqlite'] }],
  });
  const [file] = chosen.filePaths;
  if (!chosen.canceled && file !== undefined) openOther(file);
}

function menu(): MenuItemConstructorOptions[] {
  const isMac = process.platform === 'darwin';
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: say('electron.file'),
      submenu: [
        {
          label: say('electron.open-a-workshop-2'),
          accelerator: 'CmdOrCtrl+O',
          click: () => void askWhichToOpen(),
        },
        { type: 'separator' },
        { role: isMac ? 'close' : 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: say('electron.view'),
      submenu: [
        { role: 'reload' },
        { type: 'separator' },
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        ...(app.isPackaged ? [] : [{ role: 'toggleDevTools' } as const]),
      ],
    },
    {
      role: 'help',
      submenu: [{ label: say('electron.about-bolt-baffle'), click: () => app.showAboutPanel() }],
    },
  ];
}

function fileMark(dataFile: string): string {
  return createHash('sha256').update(dataFile).digest('hex').slice(0, 12);
}
