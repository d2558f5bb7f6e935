/** The matrix consumers × sticks of one log, as `consumers` prints it. */
import { gatherEvidence } from '../capture/evidence/gather-evidence.ts';
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { Track } from '../capture/evidence/track.ts';
import { chooseMapping } from '../mapping/choose-mapping.ts';
import type { PadMapping } from '../mapping/mapping.ts';
import { storedMapping } from '../mapping/stored-mapping.ts';
import { settledDwells } from '../measure/mean-rest.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import type { Chain } from './chain.ts';
import type { Consumer } from './consumer.ts';
import { smallestDriverSetting, type DriverSetting } from './driver-setting.ts';
import { judgeConsumer, type ConsumerAnswer } from './judge-consumer.ts';
import { stickUnder } from './stick-under.ts';

export interface ConsumerCell extends Omit<ConsumerAnswer, 'answer' | 'consumer' | 'stick'> {
  readonly hides: string | null;
  readonly smallestDriverZone: DriverSetting | null;
}

export interface ConsumersReport {
  readonly kind: 'stickwright-consumers';
  readonly version: 1;
  /** Name of the driver's chain; null where there is none. */
  readonly driver: string | null;
  readonly consumers: readonly {
    readonly name: string;
    readonly takes: Consumer['takes'];
    readonly source: string | null;
    readonly sticks: Readonly<Partial<Record<StickId, ConsumerCell>>>;
  }[];
}

/** The mapping of each stick is chosen as for `measure`. The smallest driver zone is asked without the driver given. */
export function answerConsumers(
  track: Track,
  given: PadMapping | null,
  consumers: readonly Consumer[],
  driver: Chain | null,
  releasesNeeded = LEAST_RELEASES,
): ConsumersReport {
  const stored = storedMapping(track.marks);
  const measured = STICKS.flatMap((stick) => {
    if (track.sticks[stick] === undefined) return [];
    const evidence = gatherEvidence(track, stick, releasesNeeded);
    const { mapping } = chooseMapping(evidence.fields, given?.[stick], stored?.[stick]);
    return [{ stick, evidence, mapping, under: stickUnder(evidence, mapping) }];
  });
  return {
    kind: 'stickwright-consumers',
    version: 1,
    driver: driver?.name ?? null,
    consumers: consumers.map((consumer) => ({
      name: consumer.name,
      takes: consumer.takes,
      source: consumer.source,
      sticks: Object.fromEntries(
        measured.flatMap(({ stick, evidence, mapping, under }) => {
          const judged = judgeConsumer(under, stick, consumer, driver);
          if (judged === null) return [];
          const { answer, stages, leak, slow, neverReaches, says } = judged;
          const survey = {
            dwells: settledDwells(evidence),
            fields: evidence.fields,
            mapping,
            toleranceRadius: under.toleranceRadius,
          };
          const smallestDriverZone =
            survey.dwells.length === 0 ? null : smallestDriverSetting([survey], stick, consumer);
          return [
            [stick, { stages, leak, slow, neverReaches, says, hides: answer.hides, smallestDriverZone }] as const,
          ];
        }),
      ),
    })),
  };
}
