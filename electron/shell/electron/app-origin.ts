/** The one origin that the window may show, and what stands at it. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { PAGE_HEADERS } from '../content-policy.ts';

export const APP_SCHEME = 'app';
export const APP_HOST = 'bench';
export const APP_ORIGIN = `${APP_SCHEME}://${APP_HOST}`;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.map': 'application/json',
};

/** True for a URL of the app's own origin; anything that is no URL is not. */
export function isAppUrl(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const url = new URL(address);
  // `origin` of a scheme that this parser does not know is the word null, so the parts are compared.
  return url.protocol === `${APP_SCHEME}:` && url.host === APP_HOST && url.username === '' && url.password === '';
}

/** The file behind a URL of the app, or null for one that would leave the folder or names none. */
export function fileBehind(folder: string, address: string): string | null {
  if (!isAppUrl(address)) return null;
  const asked = decodePath(new URL(address).pathname);
  if (asked === null || asked.includes('\0') || asked.includes('\\')) return null;
  const file = path.resolve(folder, `.${asked === '/' ? '/index.html' : asked}`);
  return file.startsWith(folder + path.sep) ? file : null;
}

/** Answers one request of the window with a file of the built page. */
export async function answerAppRequest(folder: string, request: Request): Promise<Response> {
  const file = fileBehind(folder, request.url);
  const type = file === null ? undefined : TYPES[path.extname(file)];
  if (file === null || type === undefined || request.method !== 'GET')
    return new Response(null, { status: 404, headers: PAGE_HEADERS });
  try {
    return new Response(await readFile(file), { headers: { ...PAGE_HEADERS, 'Content-Type': type } });
  } catch {
    return new Response(null, { status: 404, headers: PAGE_HEADERS });
  }
}

function decodePath(pathname: string): string | null {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return null; // A broken escape names no file.
  }
}
