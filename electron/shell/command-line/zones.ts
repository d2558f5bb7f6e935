/** `zones LOG --chain FILE`: whether a chain hides the rest of each stick, and what that costs. */
import { parseChain } from '../../../core/zones/parse-chain.ts';
import { sayLimits } from '../../../core/findings/judge-track.ts';
import { zonesTable } from '../../../core/zones/zones-table.ts';
import { readJson } from './input-files.ts';
import { zonesOfLog } from '../../bench/measure/log-answers.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ZonesOptions extends TermsOptions {
  readonly chain: string;
}

export async function answerForFile(terminal: Terminal, log: string, options: ZonesOptions): Promise<ExitCode> {
  const json = await readJson(options.chain);
  const chain = json.ok ? parseChain(json.value) : json;
  if (!chain.ok) return sayProblem(terminal, chain.problem);
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const { limits } = terms.value;
  const report = { ...zonesOfLog(track.value, terms.value, chain.value), limits: sayLimits(limits, ['releases']) };
  await terminal.print(
    terminal.json
      ? JSON.stringify(report)
      : drawSections([...zonesTable(report), ...limitsSections(limits, ['releases'])]),
  );
  return EXIT.done;
}
