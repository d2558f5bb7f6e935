import { fTail } from './f-tail.ts';
import { mean } from './mean.ts';

/** Readings[operator][part][trial]: every operator reads every part equally often (a crossed study). */
export type GaugeReadings = readonly (readonly (readonly number[])[])[];

/** Sums of squared deviations and variance components of a gauge study, in the squared unit of the readings. */
export interface GaugeStudy {
  readonly squares: {
    readonly parts: number;
    readonly operators: number;
    readonly interaction: number;
    readonly repeatability: number;
    readonly total: number;
  };
  /** Probability of an interaction at least this large by chance; null with one operator or one part. */
  readonly interactionP: number | null;
  /** The interaction was no larger than chance makes it and counts as repeatability. */
  readonly isPooled: boolean;
  readonly variances: {
    /** Trials of one operator at one part: equipment variation, EV². */
    readonly repeatability: number;
    /** Operators and their interaction with parts: appraiser variation, AV²; null with one operator. */
    readonly reproducibility: number | null;
    /** Both together: GRR². */
    readonly gauge: number;
    /** Part to part, PV²; null with one part. */
    readonly part: number | null;
    readonly total: number;
  };
  /** Degrees of freedom of the repeatability. */
  readonly degrees: number;
}

/**
 * Gauge repeatability and reproducibility by analysis of variance, random effects. The interaction is pooled with the repeatability where
 * its F test gives more than `poolFrom`; components that come out below 0 are 0.
 * Null unless all parts are read equally often by all operators, twice at least, with numbers.
 * Source: AIAG Measurement Systems Analysis, ANOVA method (from memory).
 */
export function studyGauge(readings: GaugeReadings, poolFrom = 0.05): GaugeStudy | null {
  const operators = readings.length;
  const parts = readings[0]?.length ?? 0;
  const trials = readings[0]?.[0]?.length ?? 0;
  const isCrossed = readings.every(
    (of) => of.length === parts && of.every((cell) => cell.length === trials && cell.every(Number.isFinite)),
  );
  if (operators < 1 || parts < 1 || trials < 2 || !isCrossed) return null;

  const all = readings.flat(2);
  const middle = mean(all);
  const cells = readings.map((of) => of.map((cell) => mean(cell)));
  const ofOperators = cells.map((row) => mean(row));
  const ofParts = Array.from({ length: parts }, (_, part) => mean(cells.map((row) => row[part] ?? NaN)));
  const squares = {
    parts: operators * trials * sumSquares(ofParts.map((value) => value - middle)),
    operators: parts * trials * sumSquares(ofOperators.map((value) => value - middle)),
    interaction:
      trials *
      sumSquares(
        cells.flatMap((row, o) =>
          row.map((value, p) => value - (ofOperators[o] ?? NaN) - (ofParts[p] ?? NaN) + middle),
        ),
      ),
    repeatability: sumSquares(
      readings.flatMap((of, o) => of.flatMap((cell, p) => cell.map((value) => value - (cells[o]?.[p] ?? NaN)))),
    ),
    total: sumSquares(all.map((value) => value - middle)),
  };

  const degreesInside = operators * parts * (trials - 1);
  const degreesBetween = (operators - 1) * (parts - 1);
  const inside = squares.repeatability / degreesInside;
  const between = degreesBetween === 0 ? null : squares.interaction / degreesBetween;
  // Readings that never differ leave 0/0: nothing speaks for an interaction.
  const ratio = between === 0 ? 0 : (between ?? NaN) / inside;
  const interactionP = between === null ? null : fTail(ratio, degreesBetween, degreesInside);
  const isPooled = interactionP === null || interactionP > poolFrom;
  const degrees = isPooled ? degreesInside + degreesBetween : degreesInside;
  const repeatability = isPooled ? (squares.repeatability + squares.interaction) / degrees : inside;
  const against = isPooled ? repeatability : (between ?? repeatability);
  const component = (sum: number, levels: number, each: number): number | null =>
    levels === 1 ? null : Math.max(0, (sum / (levels - 1) - against) / each);
  const ofOperator = component(squares.operators, operators, parts * trials);
  const part = component(squares.parts, parts, operators * trials);
  const ofInteraction = isPooled ? 0 : Math.max(0, (against - inside) / trials);
  const reproducibility = ofOperator === null ? null : ofOperator + ofInteraction;
  const gauge = repeatability + (reproducibility ?? 0);
  return {
    squares,
    interactionP,
    isPooled,
    variances: { repeatability, reproducibility, gauge, part, total: gauge + (part ?? 0) },
    degrees,
  };
}

function sumSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
