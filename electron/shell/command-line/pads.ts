/** `pads`: connected HID pads, and why any cannot be opened. */
import { ownerOf } from '../../../core/pad/owner.ts';
import { padMarks } from '../../../core/pad/pad-name.ts';
import type { FoundPad } from '../../transport/find-pads.ts';
import { outputHead } from './output.ts';
import { lookForPads } from './real-pads.ts';
import { drawTable } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export async function showPads(terminal: Terminal): Promise<ExitCode> {
  const found = await lookForPads();
  if (!found.ok) return sayProblem(terminal, found.problem);
  const { pads } = found.value;
  if (terminal.json) await terminal.print(JSON.stringify({ ...outputHead('pads'), pads: pads.map(padJson) }));
  else if (pads.length === 0)
    terminal.say('No pad is connected; plug one in, or try `stickwright watch --demo healthy`.');
  else await terminal.print(padsText(pads));
  return EXIT.done;
}

function padJson({ path, identity, problem, rule }: FoundPad): object {
  return { path, ...identity, problem, rule };
}

function padsText(pads: readonly FoundPad[]): string {
  const marks = padMarks(
    pads.map(({ identity }) => ({ product: identity.product, pad: ownerOf(identity, null) })),
    'pads',
  );
  const rows = pads.map(({ path, identity, problem }, index) => {
    const ids = [identity.vendorId, identity.productId].map((id) => id.toString(16).padStart(4, '0')).join(':');
    return [
      path,
      ids,
      identity.transport,
      identity.product,
      marks[index] ?? null,
      problem === null ? 'can be opened' : problem.code,
    ];
  });
  const heads = ['path', 'ids', 'transport', 'product', 'serial', 'state'];
  const table = drawTable(
    heads.map((head) => ({ head })),
    rows,
  );
  const problems = pads.flatMap(({ problem }) => (problem === null ? [] : [problem.says]));
  return [table, ...problems].join('\n\n');
}
