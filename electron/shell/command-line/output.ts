/** The first keys of every object that a command prints. */
export function outputHead<K extends string>(name: K): { readonly kind: `stickwright-${K}`; readonly version: 1 } {
  return { kind: `stickwright-${name}`, version: 1 };
}
