import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSampleBatch, SampleBatchWriter, type BatchVisitor } from '../../shared/sample-batch.ts';

type Entry = { t: number; reportId: number; bytes: number[] } | { t: number; lost: number | null };

function collect(): { entries: Entry[]; visitor: BatchVisitor } {
  const entries: Entry[] = [];
  return {
    entries,
    visitor: {
      report: (t, reportId, payload) => entries.push({ t, reportId, bytes: [...payload] }),
      gap: (t, lost) => entries.push({ t, lost }),
    },
  };
}

const anyEntry: fc.Arbitrary<Entry> = fc.oneof(
  fc.record({
    t: fc.nat(2 ** 40),
    reportId: fc.nat(255),
    bytes: fc.array(fc.nat(255), { maxLength: 80 }),
  }),
  fc.record({ t: fc.nat(2 ** 40), lost: fc.option(fc.nat(100_000)) }),
);

describe('sample batch', () => {
  it('reads back what was written, whatever was written', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 60 }), (entries) => {
        const writer = new SampleBatchWriter('pad-7');
        for (const entry of entries)
          if ('lost' in entry) writer.gap(entry.t, entry.lost);
          else writer.report(entry.t, entry.reportId, Uint8Array.from(entry.bytes));
        const read = collect();
        expect(readSampleBatch(writer.take(), read.visitor)).toEqual({ ok: true, value: 'pad-7' });
        expect(read.entries).toEqual(entries);
      }),
      { seed: 20, numRuns: 200 },
    );
  });

  it('takes exactly what was written and starts again empty', () => {
    const writer = new SampleBatchWriter('p');
    writer.report(1, 2, Uint8Array.of(3, 4, 5));
    const first = writer.take();
    expect(first.byteLength).toBe(first.buffer.byteLength);
    expect(first.length).toBe(10 + 12 + 3);
    expect(writer.entries).toBe(0);
    writer.gap(9, null);
    const read = collect();
    readSampleBatch(writer.take(), read.visitor);
    expect(read.entries).toEqual([{ t: 9, lost: null }]);
  });

  it('says where a cut batch ends, at every cut', () => {
    const writer = new SampleBatchWriter('pad');
    writer.report(1, 2, Uint8Array.of(3, 4));
    writer.gap(2, 5);
    const whole = writer.take();
    for (let length = 0; length < whole.length; length += 1) {
      const read = readSampleBatch(whole.subarray(0, length), collect().visitor);
      expect(read).toMatchObject({ ok: false, problem: { at: expect.any(Number) as number } });
    }
  });

  it('refuses bytes of another kind', () => {
    expect(readSampleBatch(new Uint8Array(40), collect().visitor)).toMatchObject({
      ok: false,
      problem: { code: 'batch-unknown', at: 0 },
    });
  });

  it('never throws on random bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const whole = Uint8Array.of(0x53, 0x57, 0x42, 0x31, ...bytes);
        expect(typeof readSampleBatch(whole, collect().visitor).ok).toBe('boolean');
      }),
      { seed: 21, numRuns: 300 },
    );
  });
});
