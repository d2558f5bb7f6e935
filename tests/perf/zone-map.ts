/** A zone map of 512² through a chain of three stages, and the matrix of 50 consumers × 2 sticks. Run: `node tests/perf/zone-map.ts`. */
import { gatherEvidence } from '../../core/capture/evidence/gather-evidence.ts';
import { rangeMapping } from '../../core/mapping/range-mapping.ts';
import { quantile } from '../../core/numeric/quantile.ts';
import { STICKS } from '../../core/pad/stick.ts';
import type { Chain } from '../../core/zones/chain.ts';
import { judgeConsumer } from '../../core/zones/judge-consumer.ts';
import { startingConsumers } from '../../core/zones/published-consumers.ts';
import { stickUnder } from '../../core/zones/stick-under.ts';
import { zoneMap } from '../../core/zones/zone-map.ts';
import { readTrack } from '../../electron/bench/measure/read-track.ts';
import { makeSurveyLog } from './survey-log.ts';

const RUNS = 40;
const CONSUMERS = 50;
const chain: Chain = {
  kind: 'stickwright-chain',
  version: 1,
  name: 'three stages',
  stages: [{ zone: 'scaledRadial', inner: 0.1, outer: 0.95 }, { curve: { exponent: 1.6 } }, { minimumOutput: 0.08 }],
  needs: 0.9,
};
/** As long, but each eighth of the plane is another one. */
const sectored: Chain = {
  ...chain,
  stages: [
    {
      zone: 'sector',
      blend: true,
      sectors: Array.from({ length: 8 }, (_, i) => ({ inner: 0.05 + i / 100, outer: 0.95 })),
    },
    ...chain.stages.slice(1),
  ],
};

function timed(figure: string, work: () => unknown, runs: number): void {
  work();
  const millis = Array.from({ length: runs }, () => {
    const from = performance.now();
    work();
    return performance.now() - from;
  });
  console.log(JSON.stringify({ figure, medianMillis: quantile(millis, 0.5), p95Millis: quantile(millis, 0.95) }));
}

timed('zone map 512² through three stages (aim < 16 ms)', () => zoneMap(chain, 512, 1.1), RUNS);
timed('zone map 512² with sectors that mirror nothing', () => zoneMap(sectored, 512, 1.1), RUNS);

const read = await readTrack(makeSurveyLog());
if (!read.ok) throw new Error(read.problem.says);
const { track } = read.value;
const evidence = gatherEvidence(track, 'left');
const mapping = rangeMapping(evidence.fields);
const consumers = Array.from({ length: CONSUMERS }, (_, i) => startingConsumers[i % startingConsumers.length]);
timed(
  'matrix of 50 consumers × 2 sticks (aim < 100 ms)',
  () => {
    const under = stickUnder(evidence, mapping);
    return consumers.flatMap((consumer) =>
      consumer === undefined ? [] : STICKS.map((stick) => judgeConsumer(under, stick, consumer, chain)),
    );
  },
  10,
);
