/** A signal path: what stands after each stage of a chain. */
import type { Stage } from './chain.ts';
import { compileStage } from './compile-stage.ts';
import { magnitude, type Step } from './stages/step.ts';

/** Magnitudes of a vector before the first stage and after each; one that is switched off leaves it as it is. */
export type SignalPath = (x: number, y: number) => Float64Array;

/** The stages in their order, those switched off too, so that places stay those of the chain. */
export function signalPath(stages: readonly Stage[]): SignalPath {
  const steps: readonly (Step | null)[] = stages.map((stage) => (stage.off === true ? null : compileStage(stage)));
  const v = new Float64Array(2);
  return (x, y) => {
    v[0] = x;
    v[1] = y;
    const path = new Float64Array(steps.length + 1);
    path[0] = magnitude(v);
    for (const [index, step] of steps.entries()) {
      step?.(v);
      path[index + 1] = magnitude(v);
    }
    return path;
  };
}
