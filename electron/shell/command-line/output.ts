/** The outermost key of every object that a command prints. */
export interface OutputHead {
  readonly kind: `stickwright-${string}`;
  readonly version: 1;
}

export function outputHead<K extends string>(name: K): { readonly kind: `stickwright-${K}`; readonly version: 1 } {
  return { kind: `stickwright-${name}`, version: 1 };
}
