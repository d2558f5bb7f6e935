/** Why the last file was not saved, for every view; null while there is nothing to say. */
export class SavingState {
  says = $state<string | null>(null);
}

export const savingState = new SavingState();
