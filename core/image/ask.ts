/** What is asked by itself before numbers go into a memory: a plain sentence, and the word that it is accepted by. */

/** The words that a confirmation repeats. */
export const askCodes = ['unknown-pad', 'factory', 'wrong-checksum'] as const;
export type AskCode = (typeof askCodes)[number];

export interface PatchAsk {
  /**
   * `factory`: the fall-back layer changes. `wrong-checksum`: a stored checksum is wrong already. `unknown-pad`: nothing tells
   * whether the numbers are of the pad that the memory is of (`judgeSource`).
   */
  readonly code: AskCode;
  readonly says: string;
}
