import { describe, expect, it } from 'vitest';
import { Entrance } from '../../../../electron/shell/local/entrance.ts';

describe('entrance', () => {
  it('exchanges a ticket for a token that is not the ticket', () => {
    const entrance = new Entrance();
    const ticket = entrance.issueTicket();
    const token = entrance.enter({ ticket });
    expect(token).toMatch(/^[\w-]{43}$/u);
    expect(token).not.toBe(ticket);
  });

  it('takes a ticket once', () => {
    const entrance = new Entrance();
    const ticket = entrance.issueTicket();
    expect(entrance.enter({ ticket })).not.toBeNull();
    expect(entrance.enter({ ticket })).toBeNull();
  });

  it('takes a token again and again and answers with it', () => {
    const entrance = new Entrance();
    const token = entrance.enter({ ticket: entrance.issueTicket() })!;
    expect(entrance.enter({ token })).toBe(token);
    expect(entrance.enter({ token })).toBe(token);
  });

  it('refuses a ticket as a token, a token as a ticket, and nothing at all', () => {
    const entrance = new Entrance();
    const ticket = entrance.issueTicket();
    expect(entrance.enter({ token: ticket })).toBeNull();
    const token = entrance.enter({ ticket })!;
    expect(entrance.enter({ ticket: token })).toBeNull();
    expect(entrance.enter({})).toBeNull();
  });

  it('lets a fresh ticket in where the token beside it is from an earlier run', () => {
    const entrance = new Entrance();
    expect(entrance.enter({ ticket: entrance.issueTicket(), token: new Entrance().issueTicket() })).not.toBeNull();
  });
});
