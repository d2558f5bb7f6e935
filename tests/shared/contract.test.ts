import { describe, expect, it } from 'vitest';
import { calls, events } from '../../shared/contract.ts';
import { EVENT_NAMES, isCallName, isEventName } from '../../shared/names.ts';
import { benchFrameSchema, LARGEST_FRAME, pageFrameSchema } from '../../shared/socket.ts';

describe('contract', () => {
  it('has every call and event by name, and no inherited one', () => {
    for (const name of Object.keys(calls)) expect(isCallName(name)).toBe(true);
    for (const name of Object.keys(events)) expect(isEventName(name)).toBe(true);
    expect(EVENT_NAMES).toEqual(Object.keys(events));
    for (const name of ['toString', '__proto__', 'constructor', '', 5, null, undefined]) {
      expect(isCallName(name)).toBe(false);
      expect(isEventName(name)).toBe(false);
    }
  });

  it('lets no path into a request: pads and surveys are named by handles alone', () => {
    const long = 'x'.repeat(65);
    expect(calls['pads.open'].request.safeParse({ pad: long }).success).toBe(false);
    expect(calls['surveys.open'].request.safeParse({ survey: '' }).success).toBe(false);
    const keys = Object.values(calls).flatMap(({ request }) => Object.keys(request.shape));
    expect(keys.filter((key) => /path|file|folder/iu.test(key))).toEqual([]);
  });

  it('refuses numbers that a survey cannot be run with', () => {
    const good = { pad: 'p', stage: null, sticks: ['left'], releases: 24, turns: 3, confirmButton: null };
    const { request } = calls['survey.start'];
    expect(request.parse(good)).toMatchObject({ steps: ['rest', 'rim', 'travel', 'flick'], sweeps: null, flicks: 2 });
    expect(request.safeParse({ ...good, sticks: [], steps: ['inputs'] }).success).toBe(true);
    for (const bad of [
      { releases: 0 },
      { releases: Number.NaN },
      { turns: 21 },
      { sticks: [] },
      { confirmButton: 129 },
      { stage: 'sold' },
      { steps: [] },
      { steps: ['dance'] },
      { disturbances: ['shake'] },
      { sweeps: 0 },
    ])
      expect(request.safeParse({ ...good, ...bad }).success).toBe(false);
  });

  it('takes a piece of an import that the screen sends, within the largest frame', () => {
    const piece = 'A'.repeat(699_052);
    const request = { upload: 'u', name: 'n'.repeat(200), piece, last: false };
    expect(calls['surveys.import'].request.safeParse(request).success).toBe(true);
    const frame = { kind: 'call', id: 2 ** 31, name: 'surveys.import', request };
    expect(JSON.stringify(frame).length).toBeLessThan(LARGEST_FRAME);
    expect(pageFrameSchema.safeParse(frame).success).toBe(true);
  });
});

describe('socket frames', () => {
  it('knows no frame but its own', () => {
    expect(pageFrameSchema.safeParse({ kind: 'enter', ticket: 'short' }).success).toBe(false);
    expect(pageFrameSchema.safeParse({ kind: 'leave' }).success).toBe(false);
    expect(benchFrameSchema.safeParse({ kind: 'answer', id: 1, result: { ok: false } }).success).toBe(false);
    expect(benchFrameSchema.safeParse({ kind: 'entered', token: 'x'.repeat(43) }).success).toBe(true);
  });
});
