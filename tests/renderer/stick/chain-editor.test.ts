import { describe, expect, test } from 'vitest';
import type { Chain } from '../../../core/zones/chain.ts';
import { parseChain } from '../../../core/zones/parse-chain.ts';
import { ChainEditor } from '../../../renderer/stick/chain-editor.svelte.ts';
import { chainLine } from '../../../renderer/chain/chain-words.ts';
import { kindOf, STAGE_KINDS } from '../../../renderer/stick/stage-kinds.ts';
import { fieldText, withField } from '../../../renderer/stick/stage-text.ts';

const empty: Chain = { kind: 'stickwright-chain', version: 1, name: 'mine', stages: [], needs: null };

function editorOf(first: Chain = empty) {
  let chain = first;
  const editor = new ChainEditor({ chain: () => chain, take: (next) => (chain = next) });
  return { editor, chain: () => chain };
}

const [axial, , scaled] = STAGE_KINDS as [(typeof STAGE_KINDS)[number], unknown, (typeof STAGE_KINDS)[number]];
const field = (kind: (typeof STAGE_KINDS)[number], key: string) =>
  kind.fields.find((one) => one.key.join('.') === key)!;

test.each(STAGE_KINDS.map((kind) => [kind.id, kind] as const))(
  '%s begins good, and its fields read back as they are written',
  (_, kind) => {
    expect(parseChain({ ...empty, stages: [kind.first] })).toMatchObject({ ok: true });
    expect(kindOf(kind.first)).toBe(kind);
    for (const one of kind.fields) expect(withField(kind.first, one, fieldText(kind.first, one))).toEqual(kind.first);
  },
);

describe('a chain under a hand', () => {
  test('is added to behind the selected stage, ordered, switched off and cut', () => {
    const { editor, chain } = editorOf();
    expect(editor.add(axial, null)).toBe(0);
    expect(editor.add(scaled, 0)).toBe(1);
    expect(editor.move(1, -1)).toBe(0);
    expect(chain().stages.map((stage) => kindOf(stage).id)).toEqual(['scaledRadial', 'axial']);
    expect(editor.move(0, -1)).toBe(0);
    editor.switchOff(1, true);
    expect(chainLine(chain())).toBe('scaled radial zone (1 switched off)');
    editor.switchOff(1, false);
    expect(chain().stages[1]).toEqual(axial.first);
    editor.remove(0);
    expect(chain().stages).toHaveLength(1);
  });

  test('refuses what cannot stand by name and place, and keeps the last good chain', () => {
    const { editor, chain } = editorOf();
    editor.add(scaled, null);
    const before = chain();
    for (const [key, text] of [
      ['inner', '120'],
      ['inner', 'x'],
      ['outer', '5'],
    ] as const)
      expect(editor.edit(0, field(scaled, key), text)?.says).toContain('Stage 1');
    expect(chain()).toBe(before);
    expect(editor.edit(0, field(scaled, 'inner'), '12,5')).toBeNull();
    expect(chain().stages[0]).toMatchObject({ inner: 0.125 });
    expect(editor.needs(Number.NaN)).not.toBeNull();
    expect(editor.needs(0.9)).toBeNull();
  });

  test.each([0, 10_000])('takes no zone of %d sectors', (count) => {
    const kind = STAGE_KINDS.find(({ id }) => id === 'sector')!;
    const { editor, chain } = editorOf();
    editor.add(kind, null);
    expect(editor.edit(0, field(kind, 'sectors'), Array(count).fill('10 100').join('\n'))).not.toBeNull();
    expect(editor.edit(0, field(kind, 'sectors'), Array(360).fill('10 100').join('\n'))).toBeNull();
    expect(chain().stages[0]).toMatchObject({ sectors: { length: 360 } });
  });

  test('is undone and done again without limit', () => {
    const { editor, chain } = editorOf();
    for (let i = 0; i < 50; i += 1) editor.add(axial, null);
    for (let i = 0; i < 50; i += 1) editor.undo();
    expect([chain(), editor.canUndo]).toEqual([empty, false]);
    for (let i = 0; i < 50; i += 1) editor.redo();
    expect([chain().stages.length, editor.canRedo]).toEqual([50, false]);
    editor.undo();
    editor.remove(0);
    expect(editor.canRedo).toBe(false);
  });

  test('a pasted chain is taken whole or refused', () => {
    const { editor, chain } = editorOf();
    expect(editor.read('{')?.code).toBe('chain-json');
    expect(editor.read(JSON.stringify({ ...empty, stages: [{ zone: 'oval', inner: 0.1 }] }))?.says).toContain(
      'Stage 1',
    );
    expect(chain()).toBe(empty);
    expect(editor.read(JSON.stringify({ ...empty, name: 'theirs', stages: [scaled.first] }))).toBeNull();
    expect(chain()).toMatchObject({ name: 'theirs', stages: [scaled.first] });
  });
});
