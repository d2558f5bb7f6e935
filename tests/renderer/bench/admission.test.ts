import { describe, expect, it } from 'vitest';
import { dropToken, keepToken, takeAdmission } from '../../../renderer/bench/admission.ts';
import { PageWindow } from './page-window.ts';

const ticket = 'aB3_-'.repeat(8);

describe('admission', () => {
  it('takes the ticket out of the address at once', () => {
    const page = new PageWindow(`http://127.0.0.1:4000/#ticket=${ticket}`);
    expect(takeAdmission(page.asWindow)).toEqual({ ticket });
    expect(page.location.href).toBe('http://127.0.0.1:4000/');
  });

  it('leaves the rest of the fragment as it was', () => {
    const page = new PageWindow(`http://127.0.0.1:4000/#view=pad&ticket=${ticket}`);
    expect(takeAdmission(page.asWindow)).toEqual({ ticket });
    expect(page.location.hash).toBe('#view=pad');
  });

  it('touches no address without a ticket', () => {
    const page = new PageWindow('http://127.0.0.1:4000/#/survey?stick=left');
    expect(takeAdmission(page.asWindow)).toEqual({});
    expect(page.replaced).toEqual([]);
  });

  it('finds the token of the tab after a reload, until it is dropped', () => {
    const page = new PageWindow('http://127.0.0.1:4000/');
    keepToken(page.asWindow, 'token');
    expect(takeAdmission(page.asWindow)).toEqual({ token: 'token' });
    dropToken(page.asWindow);
    expect(takeAdmission(page.asWindow)).toEqual({});
  });
});
