import { describe, expect, it } from 'vitest';
import { demoProfile } from '../../../core/pad/demo-profile.ts';
import { parseProfileFile } from '../../../core/pad/profile-file.ts';
import { packedProfiles } from '../../../core/pad/packed-profiles.ts';

type Json = Record<string, unknown>;

/** The demo profile as a file, changed. */
function file(change: (value: Json) => void = () => undefined): Json {
  const value = JSON.parse(JSON.stringify({ kind: 'stickwright-profile', version: 1, ...demoProfile })) as Json;
  change(value);
  return value;
}

function refusal(value: unknown): string {
  const read = parseProfileFile(value);
  return read.ok ? 'read' : `${read.problem.code}: ${read.problem.says}`;
}

function within(value: Json, ...keys: string[]): Json {
  return keys.reduce((at, key) => at[key] as Json, value);
}

describe('parseProfileFile', () => {
  it('reads a whole profile', () => {
    expect(parseProfileFile(file())).toEqual({ ok: true, value: demoProfile });
  });

  it('reads one with a single stick, no hat and no exchange', () => {
    const value = file((profile) => {
      delete profile['hat'];
      profile['sticks'] = { left: demoProfile.sticks.left };
      profile['clicks'] = {};
    });
    const read = parseProfileFile(value);
    expect(read.ok && Object.keys(read.value)).not.toContain('hat');
    expect(read.ok && read.value.sticks).toEqual({ left: demoProfile.sticks.left });
  });

  it.each([null, 7, 'profile', [], {}])('refuses %j', (value) => {
    expect(refusal(value)).toMatch(/^profile-invalid: The profile file/);
  });

  it.each<[name: string, place: string, change: (value: Json) => void]>([
    ['another kind', 'kind', (value) => (value['kind'] = 'stickwright-mapping')],
    ['a later version', 'version', (value) => (value['version'] = 2)],
    ['a key that is not known', 'colour', (value) => (value['colour'] = 'red')],
    ['no domain', 'domain', (value) => delete value['domain']],
    ['no pads', 'pads', (value) => (value['pads'] = [])],
    [
      'a product number beyond 16 bits',
      'pads[0].productId',
      (value) => (value['pads'] = [{ vendorId: 1, productId: 65_536 }]),
    ],
    ['an id with blanks', 'id', (value) => (value['id'] = 'My pad')],
    ['a field of 33 bits', 'sticks.left.x.bitSize', (value) => (within(value, 'sticks', 'left', 'x')['bitSize'] = 33)],
    [
      'a fraction for a limit',
      'sticks.left.y.maximum',
      (value) => (within(value, 'sticks', 'left', 'y')['maximum'] = 0.5),
    ],
    ['a direction of 0', 'sticks.left.x.up', (value) => (within(value, 'sticks', 'left', 'x')['up'] = 0)],
    [
      'half a byte in a step',
      'start[0].hex',
      (value) => (value['start'] = [{ ...packedProfiles[0]?.start[0], hex: '012' }]),
    ],
    [
      'an empty reply',
      'start[0].reply.hex',
      (value) => (value['start'] = [{ ...packedProfiles[0]?.start[0], reply: { reportId: 1, offset: 0, hex: '' } }]),
    ],
    [
      'a step without a time limit',
      'start[0].timeoutMillis',
      (value) => (value['start'] = [{ ...packedProfiles[0]?.start[0], timeoutMillis: 0 }]),
    ],
    ['button 129', 'buttons[0].usage', (value) => (value['buttons'] = [{ usage: 129, bitOffset: 0 }])],
  ])('refuses %s by its place', (_name, place, change) => {
    expect(refusal(file(change))).toContain('profile-invalid: The profile file: ');
    expect(refusal(file(change))).toContain(place);
  });

  it.each<[name: string, code: string, change: (value: Json) => void]>([
    [
      'a range that its bits cannot hold',
      'profile-field-range',
      (value) => (within(value, 'sticks', 'left', 'x')['maximum'] = 4096),
    ],
    ['a range of one value', 'profile-field-range', (value) => (within(value, 'triggers', 'left')['maximum'] = 0)],
    [
      'a negative minimum with an unsigned maximum',
      'profile-field-range',
      (value) => (within(value, 'sticks', 'left', 'x')['minimum'] = -1),
    ],
    [
      'a field beyond the report',
      'profile-field-outside',
      (value) => (within(value, 'sticks', 'right', 'y')['bitOffset'] = 77),
    ],
    [
      'a button beyond the report',
      'profile-field-outside',
      (value) => (value['report'] = { reportId: 1, byteLength: 10 }),
    ],
    [
      'a button twice',
      'profile-button-twice',
      (value) => (value['buttons'] as Json[]).push({ usage: 1, bitOffset: 0 }),
    ],
    ['a click of no button', 'profile-click-unknown', (value) => (value['clicks'] = { left: 17 })],
    ['a right stick alone', 'profile-stick-order', (value) => (value['sticks'] = { right: demoProfile.sticks.right })],
  ])('refuses %s by name', (_name, code, change) => {
    expect(refusal(file(change))).toMatch(new RegExp(`^${code}: The profile file .*; correct it and try again\\.$`));
  });
});
