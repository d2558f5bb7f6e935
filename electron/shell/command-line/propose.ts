/** `propose LOG`: for every stick a mapping for a stated aim, its reasons, and what it will do; no write is needed to know. */
import type { Track } from '../../../core/capture/evidence/track.ts';
import { sayLimits } from '../../../core/findings/judge-track.ts';
import { formatMappingFile } from '../../../core/mapping/mapping-file.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import type { Aim, CentreBy } from '../../../core/proposal/proposal.ts';
import type { Problem } from '../../../core/result.ts';
import { proposeForLog, type LogProposals } from '../../bench/measure/log-answers.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { refuseOverwrite, writeOutput } from './output-files.ts';
import { outputHead } from './output.ts';
import { proposalText } from './proposal-text.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ProposeOptions extends TermsOptions {
  readonly aim: Aim;
  readonly centre: CentreBy;
  readonly guard: number;
  readonly out?: string;
  readonly force?: boolean;
}

export async function proposeForFile(terminal: Terminal, log: string, options: ProposeOptions): Promise<ExitCode> {
  const refusal =
    options.out === undefined
      ? null
      : refuseOverwrite(options.out, options.force === true, [log, options.mapping, options.limits]);
  if (refusal !== null) return sayProblem(terminal, refusal);
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const wish = { aim: options.aim, centreBy: options.centre, guard: options.guard };
  const { sticks, refused } = proposeForLog(track.value, terms.value, wish);
  const none = refuseAll(sticks, refused);
  if (none !== null) return sayProblem(terminal, none);
  for (const [stick, { says }] of refused) terminal.say(`${stick} stick: ${says}`);
  const text = mappingText(track.value, sticks);
  const written = options.out === undefined ? null : await writeOutput(options.out, text, options.force === true);
  if (written?.ok === false) return sayProblem(terminal, written.problem);
  for (const { hides } of Object.values(sticks)) if (hides !== null) terminal.say(hides);
  const { limits } = terms.value;
  const foreign = limitsSections(limits);
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('proposal'), limits: sayLimits(limits), sticks })
      : [proposalText(sticks), ...(foreign.length === 0 ? [] : [drawSections(foreign)])].join('\n\n'),
  );
  return EXIT.done;
}

/** A stick that nothing can be proposed for is named; the work has failed only where there is no other. */
function refuseAll(sticks: LogProposals['sticks'], refused: LogProposals['refused']): Problem | null {
  const [first] = refused;
  if (first === undefined || Object.keys(sticks).length > 0) return null;
  return { code: first[1].code, says: refused.map(([stick, { says }]) => `${stick} stick: ${says}`).join(' ') };
}

function mappingText({ header, layout }: Track, proposals: LogProposals['sticks']): string {
  const pad = ownerOf(header.pad, header.pad.unit);
  const domain = header.domain === 'sensor' ? layout.domain : 'reported';
  const sticks = Object.fromEntries(Object.entries(proposals).map(([stick, { mapping }]) => [stick, mapping]));
  return formatMappingFile({ pad, domain, sticks });
}
