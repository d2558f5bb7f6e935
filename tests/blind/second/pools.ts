/** Draws of several cells together: what is asked of each kind of pad and each shape of gate. */
import type { Cell } from './cells.ts';
import { gateShapes } from './gate.ts';
import type { Judged } from './judge-draw.ts';
import { EVERY_PAD } from './not-gated.ts';
import type { Result } from './result.ts';

/** A cell with its draws. */
export type Drawn = readonly [Cell, readonly Judged[]];

export interface Pool extends Pick<Result, 'part' | 'name' | 'pad'> {
  readonly judged: readonly Judged[];
}

/** Sound sticks of a kind of pad whatever the gate, of a gate whatever the pad, and all. */
export function soundPools(group: readonly Drawn[]): Pool[] {
  const sound = group.filter(([{ part }]) => part === 'sound');
  const pads = [...new Set(sound.map(([{ pad }]) => pad))];
  const gates = [...new Set(sound.map(([{ name }]) => name))];
  return [
    ...pads.map((pad) =>
      poolOf(
        'every gate',
        pad,
        drawsOf(sound, (cell) => cell.pad === pad),
      ),
    ),
    ...gates.map((gate) =>
      poolOf(
        gate,
        EVERY_PAD,
        drawsOf(sound, ({ name }) => name === gate),
      ),
    ),
    ...(pads.length > 1
      ? [
          poolOf(
            'every gate',
            EVERY_PAD,
            drawsOf(sound, () => true),
          ),
        ]
      : []),
  ];
}

function poolOf(name: string, pad: string, judged: readonly Judged[]): Pool {
  return { part: 'sound', name, pad, judged };
}

/** Faults by the gate of their sticks, whatever the pad. */
export function faultPools(group: readonly Drawn[]): Pool[] {
  const faulty = group
    .map(([cell]) => cell)
    .filter(({ part }) => part === 'far' || part === 'near' || part === 'whole');
  const kinds = faulty.filter(
    ({ part, name }, at) => faulty.findIndex((one) => one.part === part && one.name === name) === at,
  );
  return kinds.flatMap(({ part, name }) => {
    const judged = drawsOf(group, (cell) => cell.part === part && cell.name === name);
    return gateShapes
      .map((shape) => ({
        part,
        name: `${name}, ${shape}`,
        pad: EVERY_PAD,
        judged: judged.filter(({ gate }) => gate === shape),
      }))
      .filter((pool) => pool.judged.length > 0);
  });
}

function drawsOf(group: readonly Drawn[], isOf: (cell: Cell) => boolean): Judged[] {
  return group.filter(([cell]) => isOf(cell)).flatMap(([, judged]) => judged);
}
