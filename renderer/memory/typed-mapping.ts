/** Six numbers as a hand types them. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { done, failed, type Result } from '../../core/result.ts';

export const TYPED_NUMBERS = (['x', 'y'] as const).flatMap((axis) =>
  (['min', 'centre', 'max'] as const).map((edge) => ({ key: `${axis}.${edge}`, axis, edge, says: `${axis} ${edge}` })),
);

/** `texts` by key, e.g. `x.min`. Refused by name: what is missing or no whole number from 0 on. */
export function readTyped(texts: Readonly<Record<string, string>>): Result<StickMapping> {
  const values = new Map<string, number>();
  for (const { key, says } of TYPED_NUMBERS) {
    const text = (texts[key] ?? '').trim();
    if (!/^\d{1,5}$/u.test(text))
      return failed('typed-number', `Write ${says} as a whole count from 0 on${text === '' ? '' : `, not "${text}"`}.`);
    values.set(key, Number(text));
  }
  const axis = (name: 'x' | 'y') => ({
    min: values.get(`${name}.min`) ?? Number.NaN,
    centre: values.get(`${name}.centre`) ?? Number.NaN,
    max: values.get(`${name}.max`) ?? Number.NaN,
  });
  return done({ x: axis('x'), y: axis('y') });
}
