/** How the page stands to the bench, and what to do when it comes back. */
import type { Connection } from './connection.ts';

export class ConnectionState {
  now = $state<Connection>('connecting');
  /** Grows each time a broken connection is there again: what was listed before may be old. */
  returns = $state(0);

  hear(connection: Connection): void {
    if (connection === 'connected' && this.now === 'lost') this.returns += 1;
    this.now = connection;
  }

  /** One plain sentence, or null while all is well. */
  get says(): string | null {
    if (this.now === 'refused')
      return 'This page is not let in: open the address that the bench prints when it starts; each is good once.';
    if (this.now === 'lost')
      return 'The bench does not answer. See whether it still runs; this page connects again by itself.';
    return null;
  }
}

export const connectionState = new ConnectionState();
