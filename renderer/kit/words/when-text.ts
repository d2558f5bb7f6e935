/** A moment in the words of the screen, as short as tells it from others. */

/** E.g. "today 09:12", "24 Nov 09:12", "24 Nov 2025 09:12". */
export function whenText(startedAt: string, now: Date): string {
  const when = new Date(startedAt);
  if (Number.isNaN(when.getTime())) return 'time not known';
  const clock = `${two(when.getHours())}:${two(when.getMinutes())}`;
  if (when.toDateString() === now.toDateString()) return `today ${clock}`;
  const month = when.toLocaleString('en-GB', { month: 'short' });
  const year = when.getFullYear() === now.getFullYear() ? '' : ` ${when.getFullYear()}`;
  return `${when.getDate()} ${month}${year} ${clock}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
