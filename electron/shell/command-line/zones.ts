/** `zones LOG --chain FILE`: whether a chain hides the rest of each stick, and what that costs. */
import { parseChain } from '../../../core/zones/parse-chain.ts';
import { answerTrack } from '../../../core/zones/zones-report.ts';
import { zonesTable } from '../../../core/zones/zones-table.ts';
import { readJson } from './input-files.ts';
import { readLog, readMapping } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ZonesOptions {
  readonly chain: string;
  readonly mapping?: string;
}

export async function answerForFile(terminal: Terminal, log: string, options: ZonesOptions): Promise<ExitCode> {
  const json = await readJson(options.chain);
  const chain = json.ok ? parseChain(json.value) : json;
  if (!chain.ok) return sayProblem(terminal, chain.problem);
  const mapping = await readMapping(options.mapping);
  if (!mapping.ok) return sayProblem(terminal, mapping.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const report = answerTrack(track.value, mapping.value, chain.value);
  await terminal.print(terminal.json ? JSON.stringify(report) : drawSections(zonesTable(report)));
  return EXIT.done;
}
