import { describe, expect, it } from 'vitest';
import { parseLimitsFile } from '../../../core/findings/limits-file.ts';
import { defaultLimits, limitIds } from '../../../core/findings/limits.ts';
import { refuseLimit } from '../../../core/findings/set-limits.ts';

/** Nothing of the schema library, nothing of the language: plain sentences. */
const FOREIGN = /Invalid|expected|received|undefined|NaN|\[object/u;

describe('a limits file', () => {
  it('gives values by the limit’s id, with or without a kind of its own', () => {
    const limits = { offCentre: 0.05, releases: 20, uncovered: 15 };
    expect(parseLimitsFile({ limits })).toEqual({ ok: true, value: limits });
    expect(parseLimitsFile({ kind: 'stickwright-limits', version: 1, limits })).toMatchObject({ ok: true });
    expect(parseLimitsFile({ limits: {} })).toEqual({ ok: true, value: {} });
  });

  it.each([
    ['an unknown limit', '{"limits":{"offcentre":0.05}}', 'offcentre'],
    ['a name that every object has', '{"limits":{"constructor":1}}', 'constructor'],
    ['a name that no object may have', '{"limits":{"__proto__":1}}', '__proto__'],
    ['a text', '{"limits":{"seat":"0.05"}}', 'seat'],
    ['null', '{"limits":{"seat":null}}', 'seat'],
    ['zero', '{"limits":{"seat":0}}', 'seat'],
    ['less than zero', '{"limits":{"seat":-1}}', 'seat'],
    ['endless', '{"limits":{"turn":1e999}}', 'turn'],
    ['a share above the whole', '{"limits":{"seat":5}}', 'seat'],
    ['too few releases', '{"limits":{"releases":6}}', 'releases'],
    ['half a release', '{"limits":{"releases":12.5}}', 'releases'],
    ['a gap as wide as a quarter', '{"limits":{"uncovered":90}}', 'uncovered'],
    ['a list', '{"limits":[0.05]}', 'limits'],
    ['no limits', '{"offCentre":0.05}', 'limits'],
    ['another kind', '{"kind":"stickwright-mapping","limits":{}}', 'kind'],
    ['a text alone', '"limits"', 'it'],
    ['nothing', 'null', 'it'],
  ])('is refused by name for %s', (_, text, name) => {
    const read = parseLimitsFile(JSON.parse(text));
    expect(read).toMatchObject({ ok: false, problem: { code: 'limits-invalid' } });
    const says = read.ok ? '' : read.problem.says;
    expect(says).toMatch(new RegExp(`^The limits file[^\\n]*\\b${name}\\b[^\\n]*\\.$`, 'u'));
    expect(says).not.toMatch(FOREIGN);
  });
});

describe('a limit', () => {
  it('may always be what the program itself holds against', () => {
    for (const id of limitIds) expect(refuseLimit(id, defaultLimits[id].value), id).toBeNull();
  });
});
