/** A number with fixed decimals and a true minus sign; −0 is written 0. */
export function signed(value: number, decimals = 0): string {
  const written = value.toFixed(decimals);
  return Number(written) === 0 ? Math.abs(value).toFixed(decimals).replace('-', '') : written.replace('-', '−');
}
