/** Parts the captures of a stick into surveys, where a log holds more than one. */
import type { Purpose } from './track.ts';

/**
 * In order of time. A survey begins anew with a rest after a rim, where a rim follows it again; a rest that was taken once more, or a
 * second rim alone, belongs to the survey it stands in. One survey where there is nothing to part.
 */
export function partSurveys<T extends { readonly purpose: Purpose }>(spans: readonly T[]): T[][] {
  const surveys: T[][] = [[]];
  spans.forEach((span, index) => {
    const current = surveys.at(-1);
    const isAnew =
      span.purpose === 'rest' &&
      current?.some(({ purpose }) => purpose === 'rim') === true &&
      spans.slice(index + 1).some(({ purpose }) => purpose === 'rim');
    if (isAnew) surveys.push([span]);
    else current?.push(span);
  });
  return surveys;
}

/** Of every purpose the captures of the last survey that has it: two surveys, of which anything may lie between, are never pooled. */
export function lastOfEach<T extends { readonly purpose: Purpose }>(spans: readonly T[]): T[] {
  const surveys = partSurveys(spans);
  if (surveys.length === 1) return [...spans];
  return surveys.flatMap((survey, at) =>
    survey.filter(
      ({ purpose }) => !surveys.slice(at + 1).some((later) => later.some((one) => one.purpose === purpose)),
    ),
  );
}
