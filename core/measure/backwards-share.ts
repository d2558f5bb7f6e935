/** Monotony of slow sweeps. */

/** A reading is behind by more than noise explains beyond so many of its σ and so many steps. */
const NOISES = 4;
const STEPS = 2;

/**
 * Share of the readings of sweeps that lie behind the farthest one before them by more than max(4σ, 2 steps), σ the usual
 * noise of the axis. `sweeps` are running medians of raw counts, each along its own way. A hand that hesitates and goes
 * back counts too. Null without readings.
 */
export function backwardsShare(sweeps: readonly Float64Array[], noise: number, step: number): number | null {
  const most = Math.max(NOISES * noise, STEPS * step);
  let [readings, behind] = [0, 0];
  for (const sweep of sweeps) {
    const way = Math.sign((sweep.at(-1) ?? 0) - (sweep[0] ?? 0));
    let farthest = Number.NEGATIVE_INFINITY;
    for (const count of sweep) {
      farthest = Math.max(farthest, way * count);
      readings += 1;
      if (farthest - way * count > most) behind += 1;
    }
  }
  return readings === 0 ? null : behind / readings;
}
