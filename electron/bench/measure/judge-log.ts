/** One log judged: its measures, findings and verdicts, and each stick's evidence. Every shell asks here, so that all judge alike. */
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
import type { Track } from '../../../core/capture/evidence/track.ts';
import type { KnownGates } from '../../../core/findings/gate-from-track.ts';
import { judgeTrack, type MeasureReport } from '../../../core/findings/judge-track.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import { stickLayers, type StickLayers } from '../../../core/findings/stored-layers.ts';
import type { MappingFile } from '../../../core/mapping/mapping-file.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';

/** What a log is judged under. */
export interface Terms {
  /** A mapping that beats what the pad stores; null without one. */
  readonly mapping: MappingFile | null;
  readonly limits: Limits;
  /** What other surveys told of the gates; nothing where left out. */
  readonly gates?: KnownGates;
}

export interface JudgedStick {
  readonly evidence: StickEvidence;
  /** The mapping in force: the file's, else the pad's stored one, else the fields' range. */
  readonly current: StickMapping;
  readonly layers: StickLayers | null;
}

export interface JudgedLog {
  readonly track: Track;
  readonly sticks: Readonly<Partial<Record<StickId, JudgedStick>>>;
  readonly report: MeasureReport;
}

export function judgeLog(track: Track, { mapping, limits, gates = {} }: Terms): JudgedLog {
  const report = judgeTrack(track, mapping?.sticks ?? null, limits, mapping?.pad ?? null, gates);
  const sticks = STICKS.flatMap((stick) => {
    const current = report.sticks[stick]?.mapping;
    if (current === undefined) return [];
    const evidence = gatherEvidence(track, stick, limits.releases.value);
    return [[stick, { evidence, current, layers: stickLayers(track.marks, stick) }] as const];
  });
  return { track, sticks: Object.fromEntries(sticks), report };
}
