/** How the page stands to the bench. */

export type Connection =
  | 'connecting'
  | 'connected'
  /** The socket broke; it is tried again by itself. */
  | 'lost'
  /** The bench does not let this page in: the address' ticket is used, missing or from an earlier run. */
  | 'refused';

export type HearConnection = (connection: Connection) => void;
