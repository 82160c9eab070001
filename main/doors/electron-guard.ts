/**
 * What the Electron window may do, load and ask for: the app's own page and what that page needs, nothing else. Each
 * point of Electron's published list has its line in docs/electron-security.md.
 */
import type { IpcMainInvokeEvent, Session, WebContents } from 'electron';

/** A standard scheme of its own, so that modules, workers and storage act as on a web page. */
export const scheme = 'bolt-and-baffle';
/** The page's origin. */
export const origin = `${scheme}://window`;
export const pageAddress = `${origin}/`;

/**
 * The one thing that the page asks of the system: to put text on the clipboard, after a press of its own button.
 * Reading the clipboard is another permission.
 */
const granted = 'clipboard-sanitized-write';

/** How all begins that the window loads: what its own protocol serves, and what the page makes itself (a file to save). */
const ownStarts = [pageAddress, `blob:${pageAddress}`, 'data:'];
/** What looks into a page is a page of its own. */
const devToolsStart = 'devtools://devtools/';

/** Whether the window may go there as a whole: the page itself, as it reloads itself after a failure. */
export function isPage(address: string): boolean {
  const [bare] = address.split('#', 1);
  return bare === pageAddress;
}

/**
 * Refuses, for all that shares the session, every address but the page's, every device, and all permissions but one.
 * isPackaged: an installed app is not looked into.
 */
export function guardSession(session: Session, isPackaged: boolean): void {
  const starts = isPackaged ? ownStarts : [...ownStarts, devToolsStart];
  session.webRequest.onBeforeRequest(({ url }, answer) =>
    answer({ cancel: !starts.some((start) => url.startsWith(start)) }),
  );
  session.setPermissionRequestHandler((_contents, permission, answer, { requestingUrl, isMainFrame }) =>
    answer(permission === granted && isMainFrame && requestingUrl.startsWith(pageAddress)),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, requestingOrigin, { isMainFrame }) =>
      permission === granted && isMainFrame && isOrigin(requestingOrigin),
  );
  session.setDevicePermissionHandler(() => false);
}

/** Keeps contents of any kind, whoever made them, on the page, and from opening anything beside it. */
export function guardContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => {
    if (!event.isMainFrame || !isPage(event.url)) event.preventDefault();
  });
  contents.on('will-navigate', (event) => {
    if (!isPage(event.url)) event.preventDefault();
  });
  // Its own protocol sends nothing elsewhere.
  contents.on('will-redirect', (event) => event.preventDefault());
}

/** Only the page of this window, at its top, may call; a frame within it never gets an answer. */
export function refuseStrangers(
  { senderFrame }: IpcMainInvokeEvent,
  contents: WebContents | undefined,
): void {
  const from = senderFrame?.url ?? '';
  if (senderFrame !== null && senderFrame === contents?.mainFrame && isPage(from)) return;
  throw new Error(`a call from "${from}" is not answered`);
}

/** Electron names an origin of a scheme of its own with or without the slash. */
function isOrigin(address: string): boolean {
  return address === origin || address === pageAddress;
}
