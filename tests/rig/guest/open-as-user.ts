/** Runs under another account: lists the pad as the product does, tries to open it, and tells. */
import { listed, transportOf } from './bench-ports.ts';
import type { UserAnswer } from './transport-checks.ts';

const [found] = await listed();
const transport = found === undefined ? null : await transportOf(found);
const opened = await transport?.open({ report: () => undefined, gap: () => undefined, lost: () => undefined });
await transport?.close();
const answer: UserAnswer = {
  problem: found?.problem ?? null,
  rule: found?.rule ?? null,
  opened: opened?.ok === true,
  openProblem: opened?.ok === false ? opened.problem : null,
};
process.send?.(answer, () => process.disconnect());
