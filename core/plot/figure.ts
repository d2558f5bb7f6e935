/** A drawing as data: what the screen and an exported SVG file both draw. Lengths in picture units (CSS pixels on screen). */

/** Which mapping a mark stands for, `first` and `second` those of two hosts; null for what no mapping changes. Never told by colour alone: each has a dash or mark of its own. */
export type Tone = 'now' | 'proposed' | 'yours' | 'before' | 'first' | 'second';

/** What a mark is; a style sheet says how each looks. */
export type Role =
  | 'grid'
  | 'axis'
  | 'frame'
  | 'full'
  | 'label'
  | 'title'
  | 'value'
  | 'reach'
  | 'spread'
  | 'onset'
  | 'atLeast'
  | 'never'
  | 'uncovered'
  | 'thin'
  | 'limit'
  | 'direction'
  | 'tag'
  | 'gate'
  | 'unit'
  | 'zone'
  | 'rest'
  | 'extent'
  | 'centre'
  | 'mark'
  | 'deflection'
  | 'scaleBar'
  | 'back'
  | 'guard'
  | 'judged'
  | 'evidence'
  | 'sample';

interface Styled {
  readonly role: Role;
  readonly tone: Tone | null;
}

export type Mark = Styled &
  (
    | { readonly kind: 'path'; readonly d: string }
    | { readonly kind: 'line'; readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }
    | { readonly kind: 'rect'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
    | { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly radius: number }
    | {
        readonly kind: 'text';
        readonly x: number;
        readonly y: number;
        readonly text: string;
        readonly anchor: 'start' | 'middle' | 'end';
      }
  );

/** The room a drawing has, and the size of its letters. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly letter: number;
}

export interface Figure {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}
