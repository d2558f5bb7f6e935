import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromBase64, PIECE_BYTES, piecesOf, toBase64 } from '../../../../renderer/kit/page/file-pieces.ts';

async function collect(pieces: ReturnType<typeof piecesOf>): Promise<{ piece: string; last: boolean }[]> {
  const all: { piece: string; last: boolean }[] = [];
  for await (const piece of pieces) all.push(piece);
  return all;
}

test('base64 gives back the bytes it was made of', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect([...(fromBase64(toBase64(bytes)) ?? [])]).toEqual([...bytes]);
    }),
    { seed: 9 },
  );
});

test('text that is no base64 is refused', () => {
  for (const text of ['abc', 'ab=d', '****', 'ab c']) expect(fromBase64(text)).toBeNull();
});

test('a file goes in pieces of at most 512 KiB, the last one marked', async () => {
  const bytes = new Uint8Array(PIECE_BYTES + 3).map((_zero, index) => index % 251);
  const pieces = await collect(piecesOf(new Blob([bytes])));
  expect(pieces.map((piece) => piece.last)).toEqual([false, true]);
  const sizes = pieces.map((piece) => fromBase64(piece.piece)?.length);
  expect(sizes).toEqual([PIECE_BYTES, 3]);
  expect(fromBase64(pieces[1]!.piece)?.[0]).toBe(PIECE_BYTES % 251);
});

test('a file of exactly one piece and an empty one are one last piece each', async () => {
  expect(await collect(piecesOf(new Blob([])))).toEqual([{ piece: '', last: true }]);
  const whole = await collect(piecesOf(new Blob([new Uint8Array(PIECE_BYTES)])));
  expect(whole.map((piece) => piece.last)).toEqual([true]);
});
