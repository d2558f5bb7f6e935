import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatHeader } from '../../../core/log/format.ts';
import { LogReader } from '../../../core/log/reader.ts';
import type { Result } from '../../../core/result.ts';
import { bytesOf, entries, header, logText, Witness, type Seen } from './format-log.ts';

const SEED = 20_250_611;

function read(
  text: string | Uint8Array,
  sizes: readonly number[] = [],
): { witness: Witness; end: Result<{ lines: number; cut: boolean }> } {
  const bytes = typeof text === 'string' ? bytesOf(text) : text;
  const witness = new Witness();
  const reader = new LogReader(witness);
  let at = 0;
  for (let i = 0; at < bytes.length; i += 1) {
    const size = Math.max(1, sizes.length === 0 ? bytes.length : (sizes[i % sizes.length] ?? 1));
    reader.push(bytes.slice(at, at + size));
    at += size;
  }
  return { witness, end: reader.end() };
}

function says(text: string): string {
  const { end } = read(text);
  if (end.ok) throw new Error('was read');
  return `${end.problem.code} @${String(end.problem.at)}: ${end.problem.says}`;
}

const HEAD = formatHeader(header());

describe('LogReader', () => {
  it('hands out every entry as it was written, however the bytes are cut', () => {
    fc.assert(
      fc.property(entries, fc.array(fc.integer({ min: 1, max: 70 }), { maxLength: 8 }), (all, sizes) => {
        const { witness, end } = read(logText(all), sizes);
        expect(end).toEqual({ ok: true, value: { lines: all.length + 1, cut: false } });
        expect(witness.headers).toEqual([header()]);
        expect(witness.seen).toEqual(JSON.parse(JSON.stringify(all)));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('reads a log one byte at a time', () => {
    const all: Seen[] = [
      { is: 'report', t: 0, id: 1, bytes: [0, 255, 16] },
      { is: 'mark', t: 3, name: 'note ü', detail: { says: 'é' } },
      { is: 'report', t: 4, id: 0, bytes: [] },
    ];
    const { witness, end } = read(logText(all), [1]);
    expect(witness.seen).toEqual(all);
    expect(end.ok).toBe(true);
  });

  it('reads a log cut off anywhere to its last whole line', () => {
    fc.assert(
      fc.property(entries, fc.double({ min: 0, max: 1, noNaN: true }), (all, share) => {
        const whole = bytesOf(logText(all));
        const kept = whole.slice(0, Math.max(1, Math.floor(share * whole.length)));
        const newlines = kept.filter((byte) => byte === 0x0a).length;
        const { witness, end } = read(kept, [13]);
        const tail = kept.length > 0 && kept.at(-1) !== 0x0a;
        if (newlines === 0 && kept.length < bytesOf(HEAD).length - 1) {
          expect(end).toMatchObject({ ok: false, problem: { code: 'log-cut-in-header', at: 1 } });
          return;
        }
        const wholeTail = tail && whole[kept.length] === 0x0a;
        const lines = newlines + (wholeTail ? 1 : 0);
        expect(end).toEqual({ ok: true, value: { lines, cut: tail && !wholeTail } });
        expect(witness.seen).toEqual(JSON.parse(JSON.stringify(all.slice(0, lines - 1))));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('takes what JSON allows but the recorder does not write: blanks, capitals, carriage returns, empty lines', () => {
    const { witness } = read(`${HEAD.trim()}\r\n["r", 5, 1, "A0 b1"]\r\n\n["r",6,1,"A0B1"]\r\n["r",7,1,"ff"]`);
    expect(witness.seen).toEqual([
      { is: 'report', t: 5, id: 1, bytes: [0xa0, 0xb1] },
      { is: 'report', t: 6, id: 1, bytes: [0xa0, 0xb1] },
      { is: 'report', t: 7, id: 1, bytes: [0xff] },
    ]);
  });

  it('skips letters that it does not know and hands on marks that it does not know', () => {
    const { witness, end } = read(`${HEAD}["t",1,2,3]\n["q"]\n["m",4,"weather",{"warm":true}]\n["r",9,0,"00"]\n`);
    expect(end).toEqual({ ok: true, value: { lines: 5, cut: false } });
    expect(witness.seen).toEqual([
      { is: 'mark', t: 4, name: 'weather', detail: { warm: true } },
      { is: 'report', t: 9, id: 0, bytes: [0] },
    ]);
  });

  it('skips a byte order mark before the header', () => {
    expect(read(`\ufeff${HEAD}`).end).toEqual({ ok: true, value: { lines: 1, cut: false } });
  });

  it('reads a header without its newline', () => {
    expect(read(HEAD.trim()).end).toEqual({ ok: true, value: { lines: 1, cut: false } });
  });

  it('names the line that goes back in time, whatever kind of entry it is', () => {
    expect(says(`${HEAD}["r",10,0,"00"]\n["r",9,0,"00"]\n`)).toBe(
      'log-time @3: Line 3 of the report log goes back in time, from 10 µs to 9 µs; the file was changed or joined from two.',
    );
    expect(says(`${HEAD}["r",10,0,"00"]\n["m",9,"release",{}]\n`)).toMatch(/^log-time @3/);
    expect(says(`${HEAD}["g",10,null]\n["r",9,0,"00"]\n`)).toMatch(/^log-time @3/);
  });

  it('refuses two logs in one file, even where the second goes on in time', () => {
    expect(says(`${HEAD}${HEAD}["r",10,0,"00"]\n`)).toBe(
      'log-joined @2: Line 2 of the report log is the header of another log: the file was joined from two; give each of them by itself.',
    );
  });

  it.each([
    ['["r",1.5,0,"00"]', 'its time 1.5 is not whole microseconds'],
    ['["r",-1,0,"00"]', 'its time -1 is not whole microseconds'],
    ['["r",9007199254740993,0,"00"]', 'is not whole microseconds'],
    ['["r",null,0,"00"]', 'its time null is not whole microseconds'],
    ['["r"]', 'its time (missing) is not whole microseconds'],
    ['["r",1,256,"00"]', 'its report id 256 is not 0 to 255'],
    ['["r",1,0,"0"]', 'half a byte'],
    ['["r",1,0,"0g"]', '"g" is not a hex digit'],
    ['["r",1,0,7]', 'its report has no hex text'],
    ['["g",1,0.5]', 'its number of lost reports 0.5 is not a whole number'],
    ['["m",1,7,{}]', 'its mark has no name'],
    ['["m",1,"x",[]]', 'its mark "x" has no object'],
  ])('refuses the line %s and says why', (line, why) => {
    const sentence = says(`${HEAD}["r",0,0,"00"]\n${line}\n["r",9,0,"00"]\n`);
    expect(sentence).toMatch(/^log-line @3: Line 3 of the report log cannot be read: /);
    expect(sentence).toContain(why);
  });

  it('counts lines that no version writes, and reads on', () => {
    const damaged: number[] = [];
    const witness = Object.assign(new Witness(), { damaged: (line: number) => damaged.push(line) });
    const reader = new LogReader(witness);
    const lines = [
      '["s",5,1,"00"]',
      '{"t":1}',
      '["x",6]',
      '[1,2]',
      '"r"',
      '["R",7,1,"00"]',
      '["rr",8]',
      '[]',
      '["ŕ",9]',
      'garbage',
      '["r",NaN,0,"00"]',
      '["m",1,"x",{"a":-Infinity}]',
      '["r",01,0,"00"]',
      '["r",7,1,"0["r",8,1,"00"]',
      '\u0000\ufffd',
    ];
    reader.push(bytesOf(`${HEAD}${lines.join('\n')}\n["r",9,0,"00"]\n`));
    expect(reader.end().ok).toBe(true);
    expect(damaged).toEqual([2, 3, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
    expect(witness.seen).toEqual([{ is: 'report', t: 9, id: 0, bytes: [0] }]);
  });

  it('tells a known letter with one bit flipped from one that a later version may write', () => {
    const damaged: number[] = [];
    const witness = Object.assign(new Witness(), { damaged: (line: number) => damaged.push(line) });
    const known = ['r', 'o', 'f', 'g', 'm'];
    const flipped = known
      .flatMap((letter) =>
        Array.from({ length: 7 }, (_, bit) => String.fromCodePoint((letter.codePointAt(0) ?? 0) ^ (1 << bit))),
      )
      .filter((letter) => !known.includes(letter) && /[a-zA-Z2-9]/u.test(letter));
    const reader = new LogReader(witness);
    reader.push(bytesOf(HEAD + flipped.map((letter) => `["${letter}",1,0,"00"]\n`).join('')));
    expect(damaged).toHaveLength(flipped.length);
    expect(flipped.length).toBeGreaterThan(20);
  });

  it('hands out nothing after the first problem and answers with it again', () => {
    const witness = new Witness();
    const reader = new LogReader(witness);
    expect(reader.push(bytesOf(`${HEAD}["r",0,0,"00"]\n["r",1]\n["r",1,0,"00"]\n`)).ok).toBe(false);
    expect(reader.push(bytesOf('["r",2,0,"00"]\n'))).toMatchObject({ ok: false, problem: { at: 3 } });
    expect(reader.end()).toMatchObject({ ok: false, problem: { code: 'log-line', at: 3 } });
    expect(witness.seen).toHaveLength(1);
  });

  it('says in one sentence that a file is empty or of another kind', () => {
    expect(says('')).toBe('log-empty @undefined: The file is empty; give a report log.');
    expect(says('\u007fELF')).toMatch(/^log-not-a-log @1: This is not a report log/);
    expect(says('t,x,y\n0,1,2\n')).toMatch(/^log-not-a-log @1: This is not a report log/);
    expect(says('{\n  "kind": "stickwright-mapping"\n}\n')).toMatch(/^log-not-a-log @1/);
    expect(says('{"kind":"stickwright-mapping","version":1}\n')).toBe(
      'log-other-kind @1: This is a file of kind "stickwright-mapping", not a report log; give a .padlog file.',
    );
    expect(says('["r",0,0,"00"]\n')).toMatch(/^log-not-a-log @1/);
  });

  it('refuses a file that has no line ends before it fills the memory', () => {
    const reader = new LogReader(new Witness());
    const piece = new Uint8Array(1 << 16).fill(0x7b);
    const answers = Array.from({ length: 20 }, () => reader.push(piece).ok);
    expect(answers[0]).toBe(true);
    expect(answers.at(-1)).toBe(false);
    expect(reader.end()).toMatchObject({ ok: false, problem: { code: 'log-not-a-log' } });
  });

  it('grows with a payload longer than any before', () => {
    const long = Array.from({ length: 3000 }, (_, i) => i & 255);
    const all: Seen[] = [1, 2, 3].map((t) => ({ is: 'report', t, id: 1, bytes: t === 2 ? long : [t] }));
    expect(read(logText(all), [997]).witness.seen).toEqual(all);
  });
});
