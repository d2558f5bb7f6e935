/** `consumers LOG`: what games and drivers make of each stick, by the published rules or by consumer files. */
import { sayLimits } from '../../../core/findings/judge-track.ts';
import type { Chain } from '../../../core/zones/chain.ts';
import type { Consumer } from '../../../core/zones/consumer.ts';
import { consumersTable } from '../../../core/zones/consumers-table.ts';
import { parseChain } from '../../../core/zones/parse-chain.ts';
import { parseConsumer } from '../../../core/zones/parse-consumer.ts';
import { startingConsumers } from '../../../core/zones/published-consumers.ts';
import { done, type Result } from '../../../core/result.ts';
import { readJson } from './input-files.ts';
import { consumersOfLog } from '../../bench/measure/log-answers.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface ConsumersOptions extends TermsOptions {
  readonly consumer?: readonly string[];
  readonly driver?: string;
}

export async function judgeForFile(terminal: Terminal, log: string, options: ConsumersOptions): Promise<ExitCode> {
  const consumers = await readConsumers(options.consumer);
  if (!consumers.ok) return sayProblem(terminal, consumers.problem);
  const driver = await readDriver(options.driver);
  if (!driver.ok) return sayProblem(terminal, driver.problem);
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const { limits } = terms.value;
  const answer = consumersOfLog(track.value, terms.value, consumers.value, driver.value);
  const report = { ...answer, limits: sayLimits(limits, ['releases']) };
  await terminal.print(
    terminal.json
      ? JSON.stringify(report)
      : drawSections([...consumersTable(report), ...limitsSections(limits, ['releases'])]),
  );
  return EXIT.done;
}

async function readConsumers(files: readonly string[] | undefined): Promise<Result<readonly Consumer[]>> {
  if (files === undefined) return done(startingConsumers);
  const consumers: Consumer[] = [];
  for (const file of files) {
    const json = await readJson(file);
    const consumer = json.ok ? parseConsumer(json.value) : json;
    if (!consumer.ok) return consumer;
    consumers.push(consumer.value);
  }
  return done(consumers);
}

async function readDriver(file: string | undefined): Promise<Result<Chain | null>> {
  if (file === undefined) return done(null);
  const json = await readJson(file);
  return json.ok ? parseChain(json.value) : json;
}
