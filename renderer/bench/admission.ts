/**
 * What lets this page in: the one-time ticket of the address' fragment, or the token that an earlier one became.
 * The token lies in the session storage of this origin and tab, so that reloading the page keeps it; it never stands
 * in an address or a cookie, no other origin can read it, and it dies with the tab or with the bench, whichever is first.
 */

const TOKEN_KEY = 'stickwright.token';
const TICKET = /(?:^#|&)ticket=([\w-]+)/u;

export interface Admission {
  readonly ticket?: string;
  readonly token?: string;
}

/** Takes the ticket out of the address at once, so that it is neither kept in the history nor copied with it. */
export function takeAdmission(page: Window): Admission {
  const ticket = TICKET.exec(page.location.hash)?.[1];
  if (ticket !== undefined) {
    const rest = page.location.hash.replace(TICKET, '').replace(/^#?&?/u, '');
    const address = page.location.pathname + page.location.search + (rest === '' ? '' : `#${rest}`);
    page.history.replaceState(page.history.state, '', address);
  }
  const token = page.sessionStorage.getItem(TOKEN_KEY);
  return { ...(ticket === undefined ? {} : { ticket }), ...(token === null ? {} : { token }) };
}

export function keepToken(page: Window, token: string): void {
  page.sessionStorage.setItem(TOKEN_KEY, token);
}

export function dropToken(page: Window): void {
  page.sessionStorage.removeItem(TOKEN_KEY);
}
