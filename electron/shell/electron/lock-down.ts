/** Everything that web content is denied: permissions, devices, the network, other pages, other windows. */
import type { Session, WebContents } from 'electron';
import { isAppUrl } from './app-origin.ts';

/** What the page may do of all that a browser can allow: put plain text on the clipboard. Reading it stays denied. */
const CLIPBOARD = 'clipboard-sanitized-write';

/** Denies by default: pads are read by the bench alone, and files are saved by the main process. */
export function lockSession(session: Session, packaged: boolean): void {
  session.setPermissionRequestHandler((_contents, permission, decide, { isMainFrame, requestingUrl }) =>
    decide(permission === CLIPBOARD && isMainFrame && isAppUrl(requestingUrl)),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, origin, { isMainFrame }) => permission === CLIPBOARD && isMainFrame && isAppUrl(origin),
  );
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, decide) => {
    const own = isAppUrl(details.url) || (!packaged && details.url.startsWith('devtools://'));
    decide({ cancel: !own });
  });
  session.on('will-download', (event) => event.preventDefault());
}

/** Keeps a window on the app's own pages. */
export function lockContents(contents: WebContents): void {
  const stay = (event: { preventDefault(): void; readonly url: string }): void => {
    if (!isAppUrl(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
