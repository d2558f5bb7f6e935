/** The numbers of a mapping in words. */

const EDGES: Readonly<Record<string, string>> = { min: 'minimum', centre: 'centre', max: 'maximum' };

/** E.g. `x.max` → `x maximum`; what is not of this form stays as it is. */
export function edgeName(of: string): string {
  const [axis, edge] = of.split('.');
  const word = edge === undefined ? undefined : EDGES[edge];
  return axis === undefined || word === undefined ? of : `${axis} ${word}`;
}
