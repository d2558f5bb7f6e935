/** `propose LOG`: for every stick a mapping for a stated aim, its reasons, and what it will do; no write is needed to know. */
import { gatherEvidence } from '../../../core/capture/gather-evidence.ts';
import type { Track } from '../../../core/capture/track.ts';
import { chooseMapping } from '../../../core/mapping/choose-mapping.ts';
import { formatMappingFile } from '../../../core/mapping/mapping-file.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { storedMapping } from '../../../core/mapping/stored-mapping.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { propose } from '../../../core/proposal/propose.ts';
import type { Aim, CentreBy } from '../../../core/proposal/proposal.ts';
import { failed, type Problem, type Result } from '../../../core/result.ts';
import { readLog, readMapping } from './log-input.ts';
import { refuseOverwrite, writeOutput } from './output-files.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { hiddenFault } from '../../../core/findings/hidden-fault.ts';
import { outputHead } from './output.ts';
import { proposalText, type Proposals } from './proposal-text.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ProposeOptions {
  readonly aim: Aim;
  readonly centre: CentreBy;
  readonly guard: number;
  readonly mapping?: string;
  readonly out?: string;
  readonly force?: boolean;
}

/** The bootstrap is drawn alike every time. */
const SEED = 1;

export async function proposeForFile(terminal: Terminal, log: string, options: ProposeOptions): Promise<ExitCode> {
  const refusal =
    options.out === undefined ? null : refuseOverwrite(options.out, options.force === true, [log, options.mapping]);
  if (refusal !== null) return sayProblem(terminal, refusal);
  const mapping = await readMapping(options.mapping);
  if (!mapping.ok) return sayProblem(terminal, mapping.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const proposals = proposeAll(terminal, track.value, mapping.value, options);
  if (!proposals.ok) return sayProblem(terminal, proposals.problem);
  const text = mappingText(track.value, proposals.value);
  const written = options.out === undefined ? null : await writeOutput(options.out, text, options.force === true);
  if (written?.ok === false) return sayProblem(terminal, written.problem);
  const { findings } = judgeTrack(track.value, mapping.value);
  const sticks = Object.fromEntries(
    STICKS.flatMap((stick) => {
      const proposal = proposals.value[stick];
      return proposal === undefined ? [] : [[stick, { ...proposal, hides: hiddenFault(findings, stick) }] as const];
    }),
  );
  for (const { hides } of Object.values(sticks)) if (hides !== null) terminal.say(hides);
  await terminal.print(
    terminal.json ? JSON.stringify({ ...outputHead('proposal'), sticks }) : proposalText(proposals.value),
  );
  return EXIT.done;
}

/** A stick that nothing can be proposed for is named; the work has failed only where there is no other. */
function proposeAll(
  terminal: Terminal,
  track: Track,
  given: PadMapping | null,
  options: ProposeOptions,
): Result<Proposals> {
  const stored = storedMapping(track.marks);
  const proposals: Proposals = {};
  const refusals: [StickId, Problem][] = [];
  for (const stick of STICKS) {
    const fields = track.sticks[stick]?.fields;
    if (fields === undefined) continue;
    const { x, y } = fields;
    const proposal = propose(gatherEvidence(track, stick), {
      aim: options.aim,
      centreBy: options.centre,
      guard: options.guard,
      current: chooseMapping(fields, given?.[stick], stored?.[stick]).mapping,
      // Nothing is stored from here: a mapping for the host alone may use the whole range of the fields.
      limits: { whole: true, least: Math.min(x.minimum, y.minimum), greatest: Math.max(x.maximum, y.maximum) },
      seed: SEED,
    });
    if (proposal.ok) proposals[stick] = proposal.value;
    else refusals.push([stick, proposal.problem]);
  }
  const [first] = refusals;
  if (first !== undefined && Object.keys(proposals).length === 0)
    return failed(first[1].code, refusals.map(([stick, { says }]) => `${stick} stick: ${says}`).join(' '));
  for (const [stick, { says }] of refusals) terminal.say(`${stick} stick: ${says}`);
  return { ok: true, value: proposals };
}

function mappingText({ header, layout }: Track, proposals: Proposals): string {
  const { vendorId, productId, serial } = header.pad;
  const domain = header.domain === 'sensor' ? layout.domain : 'reported';
  const sticks = Object.fromEntries(Object.entries(proposals).map(([stick, { mapping }]) => [stick, mapping]));
  return formatMappingFile({ pad: { vendorId, productId, serial }, domain, sticks });
}
