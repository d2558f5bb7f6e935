/** Everything that web content is denied: permissions, devices, the network, other pages, other windows. */
import type { Session, WebContents } from 'electron';
import { isAppUrl } from './app-origin.ts';

/** Denies by default: the page needs no permission of the browser, and pads are read by the bench alone. */
export function lockSession(session: Session, packaged: boolean): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
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
