/**
 * Imported first by every script that a person starts: says in one sentence that this Node is too old, before anything
 * breaks on it. So it keeps to what Node 12 understands. What is needed stands in package.json alone.
 */
import { readFileSync } from 'node:fs';

const file = new URL('../package.json', import.meta.url);

/** Whether a version, e.g. `22.18.1`, fits a range of `^a.b.c` and `>=a.b.c` parts between `||`. */
export function fits(version, range) {
  const have = numbersOf(version);
  return range.split('||').some((part) => {
    const need = numbersOf(part);
    const isLater = compare(have, need) >= 0;
    return part.trim().startsWith('^') ? isLater && have[0] === need[0] : isLater;
  });
}

/** The range in words: `22.22 or newer of 22, 24.15 or newer of 24, 26.0 or newer`. */
export function wordsFor(range) {
  return range
    .split('||')
    .map((part) => {
      const [major, minor] = numbersOf(part);
      return `${major}.${minor} or newer${part.trim().startsWith('^') ? ` of ${major}` : ''}`;
    })
    .join(', ');
}

function numbersOf(text) {
  const found = /(\d+)(?:\.(\d+))?(?:\.(\d+))?/.exec(text) || [];
  return [1, 2, 3].map((place) => Number(found[place] || 0));
}

function compare(a, b) {
  const place = [0, 1, 2].find((one) => a[one] !== b[one]);
  return place === undefined ? 0 : a[place] - b[place];
}

const range = JSON.parse(readFileSync(file, 'utf8')).engines.node;
if (!fits(process.versions.node, range)) {
  console.error(
    `Stickwright needs Node ${wordsFor(range)}, and this is Node ${process.versions.node}; install one of those and try again.`,
  );
  process.exit(1);
}
