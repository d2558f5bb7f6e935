/** One stage of a chain → the function that does it. */
import type { Stage } from './chain.ts';
import { compileAxial } from './stages/axial.ts';
import { compileCurve } from './stages/curve.ts';
import { compileDigital } from './stages/digital.ts';
import { compileLimit } from './stages/limit.ts';
import { compileMinimumOutput } from './stages/minimum-output.ts';
import { compileQuantise } from './stages/quantise.ts';
import { compileRadial } from './stages/radial.ts';
import { compileScaledRadial } from './stages/scaled-radial.ts';
import { compileSector } from './stages/sector.ts';
import { compileShape } from './stages/shape.ts';
import { compileSlopedAxial } from './stages/sloped-axial.ts';
import type { Step } from './stages/step.ts';

/** Whether the stage is switched off is the caller's to look at. */
export function compileStage(stage: Stage): Step {
  if ('zone' in stage) return compileZone(stage);
  if ('minimumOutput' in stage) return compileMinimumOutput(stage);
  if ('curve' in stage) return compileCurve(stage);
  if ('limit' in stage) return compileLimit(stage);
  if ('shape' in stage) return compileShape(stage);
  if ('quantise' in stage) return compileQuantise(stage);
  return compileDigital(stage);
}

function compileZone(stage: Extract<Stage, { zone: string }>): Step {
  switch (stage.zone) {
    case 'axial':
      return compileAxial(stage);
    case 'radial':
      return compileRadial(stage);
    case 'scaledRadial':
      return compileScaledRadial(stage);
    case 'sector':
      return compileSector(stage);
    case 'slopedAxial':
      return compileSlopedAxial(stage);
  }
}
