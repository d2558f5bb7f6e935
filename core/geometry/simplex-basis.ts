export type Four = [number, number, number, number];

/** One unknown of a linear programme with four equations: what a unit of it earns, and what it uses of each. */
export interface Column<Tag> {
  readonly earns: number;
  readonly uses: Readonly<Four>;
  readonly tag: Tag;
}

/** A basic column with its weight and its row of the basis' inverse. */
interface BasisRow<Tag> {
  column: Column<Tag>;
  weight: number;
  inverse: Four;
}

/**
 * Basis of the revised simplex method for: maximise Σ earns·w under Σ uses·w = (1, 1, 0, 0), w ≥ 0.
 * Holds the inverse of the four basic columns; the caller finds the column to take in by its price.
 * Source: the method is textbook (Dantzig); small and dense, so nothing is factorised.
 */
export class SimplexBasis<Tag> {
  readonly #rows: BasisRow<Tag>[];

  /** Four independent columns whose weights come out ≥ 0. */
  constructor(columns: readonly [Column<Tag>, Column<Tag>, Column<Tag>, Column<Tag>]) {
    this.#rows = columns.map((column, k) => ({
      column,
      weight: k < 2 ? 1 : 0,
      inverse: [0, 0, 0, 0].with(k, 1) as Four,
    }));
    let free = [...this.#rows];
    for (const column of columns) {
      const row = free.reduce((a, b) => (Math.abs(share(b, column)) > Math.abs(share(a, column)) ? b : a));
      free = free.filter((other) => other !== row);
      this.#pivot(row, column);
    }
  }

  /** What a unit of each equation is worth; a column pays if it earns more than its uses at these prices. */
  prices(): Four {
    const prices: Four = [0, 0, 0, 0];
    for (const { column, inverse } of this.#rows) {
      for (const [c, value] of inverse.entries()) prices[c] = (prices[c] ?? NaN) + column.earns * value;
    }
    return prices;
  }

  value(): number {
    return this.#rows.reduce((sum, row) => sum + row.column.earns * row.weight, 0);
  }

  tags(): Tag[] {
    return this.#rows.map((row) => row.column.tag);
  }

  /** Takes a column in for the basic one that reaches weight 0 first; false where none does. */
  enter(column: Column<Tag>): boolean {
    let leaving: BasisRow<Tag> | null = null;
    let least = Infinity;
    for (const row of this.#rows) {
      const used = share(row, column);
      if (used <= 1e-12) continue;
      const ratio = Math.max(0, row.weight) / used;
      // Of equal ratios the larger pivot loses fewer digits.
      if (ratio < least || (ratio === least && leaving !== null && used > share(leaving, column))) {
        least = ratio;
        leaving = row;
      }
    }
    if (leaving === null) return false;
    this.#pivot(leaving, column);
    return true;
  }

  #pivot(row: BasisRow<Tag>, column: Column<Tag>): void {
    const shares = this.#rows.map((each) => share(each, column));
    const pivot = share(row, column);
    row.column = column;
    row.weight /= pivot;
    row.inverse = row.inverse.map((value) => value / pivot) as Four;
    for (const [r, other] of this.#rows.entries()) {
      if (other === row) continue;
      const part = shares[r] ?? NaN;
      other.weight -= part * row.weight;
      other.inverse = other.inverse.map((value, c) => value - part * (row.inverse[c] ?? NaN)) as Four;
    }
  }
}

/** How much weight the basic column of the row loses for a unit of the other column. */
function share(row: BasisRow<unknown>, column: Column<unknown>): number {
  const [a, b, c, d] = row.inverse;
  const [p, q, r, s] = column.uses;
  return a * p + b * q + c * r + d * s;
}
