import { describe, expect, it } from 'vitest';
import { Entrance, MOST_TICKETS, TICKET_MILLIS } from '../../../../electron/shell/local/entrance.ts';
import { FakeClock } from '../../../support/fake-clock.ts';

describe('entrance', () => {
  it('exchanges a ticket for a token that is not the ticket', () => {
    const entrance = new Entrance(new FakeClock());
    const ticket = entrance.issueTicket();
    const token = entrance.enter({ ticket });
    expect(token).toMatch(/^[\w-]{43}$/u);
    expect(token).not.toBe(ticket);
  });

  it('takes a ticket once', () => {
    const entrance = new Entrance(new FakeClock());
    const ticket = entrance.issueTicket();
    expect(entrance.enter({ ticket })).not.toBeNull();
    expect(entrance.enter({ ticket })).toBeNull();
  });

  it('takes a token again and again and answers with it', () => {
    const entrance = new Entrance(new FakeClock());
    const token = entrance.enter({ ticket: entrance.issueTicket() })!;
    expect(entrance.enter({ token })).toBe(token);
    expect(entrance.enter({ token })).toBe(token);
  });

  it('refuses a ticket as a token, a token as a ticket, and nothing at all', () => {
    const entrance = new Entrance(new FakeClock());
    const ticket = entrance.issueTicket();
    expect(entrance.enter({ token: ticket })).toBeNull();
    const token = entrance.enter({ ticket })!;
    expect(entrance.enter({ ticket: token })).toBeNull();
    expect(entrance.enter({})).toBeNull();
  });

  it('lets a fresh ticket in where the token beside it is from an earlier run', () => {
    const entrance = new Entrance(new FakeClock());
    expect(
      entrance.enter({ ticket: entrance.issueTicket(), token: new Entrance(new FakeClock()).issueTicket() }),
    ).not.toBeNull();
  });

  it('refuses a ticket that was not used in time, and says once that it is gone', () => {
    const clock = new FakeClock();
    const entrance = new Entrance(clock);
    const gone: string[] = [];
    const ticket = entrance.issueTicket(() => void gone.push('late'));
    clock.pass(TICKET_MILLIS - 1);
    const used = entrance.issueTicket(() => void gone.push('used'));
    expect(entrance.enter({ ticket: used })).not.toBeNull();
    expect(gone).toEqual(['used']);
    clock.pass(2);
    expect(entrance.enter({ ticket })).toBeNull();
    expect(gone).toEqual(['used', 'late']);
    clock.pass(TICKET_MILLIS);
    expect(gone).toEqual(['used', 'late']);
    expect(clock.waiting).toBe(0);
  });

  it('keeps a number of unused tickets, the newest', () => {
    const clock = new FakeClock();
    const entrance = new Entrance(clock);
    const tickets = Array.from({ length: MOST_TICKETS + 1 }, () => entrance.issueTicket());
    expect(clock.waiting).toBe(MOST_TICKETS);
    expect(entrance.enter({ ticket: tickets[0] })).toBeNull();
    expect(entrance.enter({ ticket: tickets[1] })).not.toBeNull();
    expect(entrance.enter({ ticket: tickets.at(-1) })).not.toBeNull();
  });

  it('lets nobody in by a ticket once it is closed', () => {
    const clock = new FakeClock();
    const entrance = new Entrance(clock);
    const ticket = entrance.issueTicket();
    entrance.close();
    expect(entrance.enter({ ticket })).toBeNull();
    expect(clock.waiting).toBe(0);
  });
});
