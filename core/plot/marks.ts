/** Short makers of the marks of a figure. */
import type { Mark, Role, Tone } from './figure.ts';
import { polylinePath } from './polyline-path.ts';

export function line(role: Role, tone: Tone | null, x1: number, y1: number, x2: number, y2: number): Mark {
  return { kind: 'line', role, tone, x1, y1, x2, y2 };
}

/** A polyline through x and y in turn; see `polylinePath` for gaps. */
export function polyline(role: Role, tone: Tone | null, points: ArrayLike<number>, close = false): Mark {
  return { kind: 'path', role, tone, d: polylinePath(points, close) };
}

export function text(
  role: Role,
  tone: Tone | null,
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'middle',
): Mark {
  return { kind: 'text', role, tone, x, y, text: words, anchor };
}

export function dot(role: Role, tone: Tone | null, x: number, y: number, radius: number): Mark {
  return { kind: 'dot', role, tone, x, y, radius };
}

/** A filled triangle standing on its tip at (x, y), `size` high, pointing down; with a negative size it hangs from its tip and points up. */
export function pointer(role: Role, tone: Tone | null, x: number, y: number, size: number): Mark {
  const half = size * 0.55;
  return { kind: 'path', role, tone, d: polylinePath([x, y, x - half, y - size, x + half, y - size], true) };
}

/** Slanted lines that fill a box, as one path: hatching that needs no pattern and exports as it is. */
export function hatch(
  role: Role,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  spacing: number,
): Mark {
  const points: number[] = [];
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  // Each line is x + y = c; stepping c from a multiple of the spacing keeps neighbouring boxes in register.
  for (let c = Math.ceil((box.x + box.y) / spacing) * spacing; c <= right + bottom; c += spacing) {
    const startX = Math.max(box.x, c - bottom);
    const endX = Math.min(right, c - box.y);
    if (endX > startX) points.push(startX, c - startX, endX, c - endX, Number.NaN, Number.NaN);
  }
  return { kind: 'path', role, tone: null, d: polylinePath(points) };
}
