/** Refuses by name a mapping that cannot turn counts into deflections, or that a layer cannot hold. */
import type { Problem } from '../result.ts';
import type { LayerLimits } from './layer-limits.ts';
import type { AxisMapping, StickMapping } from './mapping.ts';

/**
 * Null for a good mapping: min < centre < max on both axes, edges whole counts, centre whole or at .5. With the
 * limits of a layer also whole counts (where it takes only those) that it can encode.
 */
export function checkMapping(mapping: StickMapping, layer: LayerLimits | null = null): Problem | null {
  return checkAxis(mapping.x, 'x', layer) ?? checkAxis(mapping.y, 'y', layer);
}

function checkAxis(axis: AxisMapping, name: string, layer: LayerLimits | null): Problem | null {
  return (
    checkNumber(axis.min, `${name}.min`, 1, layer) ??
    checkNumber(axis.centre, `${name}.centre`, layer?.whole === true ? 1 : 2, layer) ??
    checkNumber(axis.max, `${name}.max`, 1, layer) ??
    checkOrder(axis, name)
  );
}

/** `parts`: into how many a count may be divided. */
function checkNumber(value: number, name: string, parts: 1 | 2, layer: LayerLimits | null): Problem | null {
  if (Number.isNaN(value)) return problem('mapping-not-a-number', `${name} is not a number; give a raw count.`);
  if (!Number.isFinite(value)) return problem('mapping-infinite', `${name} is infinite; give a raw count.`);
  if (!Number.isInteger(value * parts))
    return problem(
      'mapping-not-whole',
      `${name} is ${value}; give a whole count${parts === 2 ? ' or one that ends in .5' : ''}.`,
    );
  if (layer !== null && (value < layer.least || value > layer.greatest))
    return problem(
      'mapping-outside-layer',
      `${name} is ${value}; the layer holds ${layer.least} to ${layer.greatest}, choose a count within.`,
    );
  return null;
}

function checkOrder(axis: AxisMapping, name: string): Problem | null {
  if (axis.min >= axis.centre)
    return problem(
      'mapping-min-not-below-centre',
      `${name}.min ${axis.min} is not below ${name}.centre ${axis.centre}; lower the one or raise the other.`,
    );
  if (axis.centre >= axis.max)
    return problem(
      'mapping-max-not-above-centre',
      `${name}.max ${axis.max} is not above ${name}.centre ${axis.centre}; raise the one or lower the other.`,
    );
  return null;
}

function problem(code: string, says: string): Problem {
  return { code, says: `The mapping cannot be used: ${says}` };
}
