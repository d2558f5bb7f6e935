/** What a view adds to the foot line beside the selection, e.g. the numbers of the direction pointed at. */
export class FootLine {
  /** Short texts, shown in order. */
  parts = $state.raw<readonly string[]>([]);
  /** One text at the right end, e.g. what is not covered. */
  end = $state('');

  clear(): void {
    this.parts = [];
    this.end = '';
  }
}

export const footLine = new FootLine();
