import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '../../../renderer');

/** Where a product is shown beside the mark that tells it from its like, or kept with the pad's identity. */
const WITH_MARK: Readonly<Record<string, RegExp>> = {
  'pads/PadInHand.svelte': /shortenMiddle\(name\.product, room\)\} · \$\{mark\}/u,
  'pads/PadList.svelte': /\{pad\.identity\.product\} <span class="mark">\{names\[index\]\?\.mark\}/u,
  'surveys/SurveyList.svelte': /<span class="name">\{names\[row\]\?\.mark\}/u,
  'findings/GatePanel.svelte': /doubtGateOwner\(told, \{ product: details\.identity\.product, pad: details\.pad \}\)/u,
  'workbench/KeptPanel.svelte': /product: identity\.product, pad,/u,
  'memory/MemoryView.svelte': /names\[index\]\?\.says \?\? journal\.identity\.product/u,
};

/** Every other place names pads through renderer/pads, which adds the serial number, the unit or a number. */
test('no list of the screen shows a product alone', () => {
  const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.svelte'));
  expect(files.length).toBeGreaterThan(80);
  const showing = files.filter((file) => {
    const [source = ''] = readFileSync(path.join(ROOT, file), 'utf8').split('<style>');
    return /\.product\b/u.test(source);
  });
  expect(showing.toSorted()).toEqual(Object.keys(WITH_MARK).toSorted());
  for (const [file, mark] of Object.entries(WITH_MARK))
    expect(readFileSync(path.join(ROOT, file), 'utf8'), file).toMatch(mark);
});
