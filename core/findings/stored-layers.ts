/** What a pad stores for a stick in its layers, from the `layers` mark of a log. */
import type { Mark } from '../log/visitor.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { storedMapping } from '../mapping/stored-mapping.ts';
import type { StickId } from '../pad/stick.ts';

export interface StickLayers {
  readonly user: StickMapping | null;
  readonly factory: StickMapping | null;
}

/** Each layer read by itself, as `storedMapping` reads the one that a pad uses. Null without a mark. */
export function stickLayers(marks: readonly Mark[], stick: StickId): StickLayers | null {
  const mark = marks.findLast(({ name }) => name === 'layers');
  const layers = mark?.detail['layers'];
  if (mark === undefined || typeof layers !== 'object' || layers === null) return null;
  const only = (layer: 'user' | 'factory'): StickMapping | null => {
    const value = (layers as Readonly<Record<string, unknown>>)[layer];
    return storedMapping([{ ...mark, detail: { layers: { [layer]: value } } }])?.[stick] ?? null;
  };
  return { user: only('user'), factory: only('factory') };
}
