/** Worn track: stretches of an axis with gaps, leaps, unsteady readings or readings that go back. */
import type { AxisTravel, CountRun } from '../measure/travel-measure.ts';
import { unionLength } from '../measure/union-length.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Gaps shorter than this many counts are the converter's own. */
const LEAST_RUN = 3;
/** The ends of a stretch are known to about a reading each: as a share of its length. */
const ENDS = 0.3;

/** Unsteadiness of a stretch in which every reading is off: in `unsteady` no reading counts for more. */
const ALL_OFF = 8;

interface Worn {
  readonly axis: 'x' | 'y';
  readonly share: number;
  readonly runs: readonly CountRun[];
  readonly gaps: number;
  readonly times: number | null;
  /** Sweeps that go back at one place, at most. */
  readonly back: number;
  readonly jumps: number | null;
}

/**
 * Measure: the worn share of the travelled counts of the worse axis: runs of counts that never occur, places where sweep after
 * sweep goes back, and stretches where the reading is unsteadier than elsewhere, each by its length · min(1, times²/64): a stretch is told to a window of readings
 * only, and what is steady in the window thins its unsteadiness out; of one whose readings are all off by eight σ it is the length. A regular comb is the firmware's step, not wear. In the `reported` domain the pad's own
 * mapping leaves counts out and stretches others: there only what goes back counts, for the corners of the mapping, at the rest and at full output, look
 * unsteady.
 */
export function findWornTrack(subject: Subject, limits: Limits): Finding | null {
  const { report, stick, domain } = subject;
  if (report.travel === null) return null;
  const isReported = domain === 'reported';
  const axes = (['x', 'y'] as const).flatMap((axis) => wornOf(axis, report.travel?.[axis] ?? null, isReported));
  const [worst] = axes.toSorted((a, b) => b.share - a.share);
  if (worst === undefined) return null;
  const { axis, share, runs, gaps, times, back, jumps } = worst;
  const [longest] = runs;
  const where = longest === undefined ? '' : ` (counts ${Math.round(longest.from)} to ${Math.round(longest.to)})`;
  const how = isReported ? 'goes back in sweep after sweep' : 'is unsteady, goes back or is never read';
  const says = `${percent(share, 2)} of the ${axis} travel of the ${stick} stick ${how}${where}`;
  return makeFinding({
    id: 'worn-track',
    stick,
    value: share,
    u95: ENDS * share,
    limit: limits.wornTravel,
    severity: 'fault',
    says: {
      fail: `${says}: the track is worn there.`,
      pass: `${says}: no wear is seen along both axes.`,
      'cannot say': `${says}; whether that is wear cannot be told.`,
    },
    for: [
      times === null ? null : `Readings there are ${times.toFixed(1)} times as unsteady as elsewhere on the axis.`,
      back === 0 ? null : `In ${back} sweeps the reading goes back there.`,
      gaps === 0 ? null : `${gaps} counts there never occur while their neighbours do.`,
      jumps === null || jumps === 0 ? null : `${jumps} single readings leap and come back.`,
    ],
    against: [
      'A magnetic part has no track: there, look for a loose wire first.',
      back === 0 ? null : 'A hand that stops at the same place in sweep after sweep and springs back looks the same.',
    ],
    causes: [
      'The wiper has worn the track where it travels most',
      'Dirt or dried grease on the track',
      'A loose wire or cracked joint that moves with the stick',
    ],
    next: 'Sweep slowly over that place and watch the strip: if it stays where it is, replace the part; if it wanders, go over the joints.',
    unsure: 'Sweep slowly over that place once more and watch the strip.',
    shows: { counts: runs.slice(0, 20).map(({ from, to }) => ({ axis, from, to })) },
  });
}

function wornOf(axis: 'x' | 'y', travel: AxisTravel | null, isReported: boolean): Worn[] {
  if (travel === null) return [];
  const back = travel.backwardsAt ?? [];
  if (back.length === 0 && (isReported ? travel.backwardsAt : (travel.unsteady ?? travel.missing)) === null) return [];
  const gaps = isReported ? [] : travel.runs.filter(({ from, to }) => (to - from) / travel.step + 1 >= LEAST_RUN);
  const unsteady = isReported ? [] : (travel.unsteady ?? []);
  const runs = [...unsteady, ...back, ...gaps].toSorted((a, b) => b.to - b.from - (a.to - a.from));
  const counts =
    unionLength([...back, ...gaps].map(({ from, to }) => ({ from, to: to + travel.step }))) +
    unsteady
      .filter(({ from, to }) => ![...back, ...gaps].some((one) => one.from <= to && from <= one.to))
      .reduce((sum, { from, to, times }) => sum + (to - from + travel.step) * Math.min(1, (times / ALL_OFF) ** 2), 0);
  return [
    {
      axis,
      share: counts / (travel.max - travel.min),
      runs: runs.map(({ from, to }) => ({ from, to })),
      gaps: gaps.reduce((sum, { from, to }) => sum + Math.round((to - from) / travel.step) + 1, 0),
      times: unsteady.length === 0 ? null : Math.max(...unsteady.map(({ times }) => times)),
      back: Math.max(0, ...back.map(({ sweeps }) => sweeps)),
      jumps: travel.jumps,
    },
  ];
}
