import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readLog } from '../../../support/read-log.ts';
import { makeBench, surveyOf, valueOf } from '../make-bench.ts';
import { ScriptedTransport, sourceOf } from '../scripted-transport.ts';

describe('the log of a pad that had to be started', () => {
  it('begins with what was sent to it, and says how long before that was', async () => {
    const transport = new ScriptedTransport('usb-pad', { vendorId: 0x057e, productId: 0x2006 }, null);
    // Command 3 is answered in report 33, its number at byte 13.
    transport.onSent = () => transport.report(1000, 0x21, ...Array<number>(13).fill(0), 0x03);
    const test = await makeBench({
      watcher: {
        start: (hear) => hear([sourceOf(transport)]),
        pause: () => undefined,
        resume: () => undefined,
        close: () => Promise.resolve(),
      },
    });
    const pads = valueOf(await test.bench.handle('pads.list', {}));
    const pad = pads.find(({ identity }) => identity.product.startsWith('Scripted'))?.pad ?? '';
    valueOf(await test.bench.handle('pads.open', { pad }));
    const openedAt = test.clock.micros();
    await test.pass(1500);
    const ago = test.clock.micros() - openedAt;
    const { survey } = valueOf(await test.bench.handle('survey.start', surveyOf(pad)));
    valueOf(await test.bench.handle('survey.say', { survey, what: 'abort' }));
    const { entries } = await readLog(path.join(test.folder, 'surveys', survey, 'log.padlog'));
    expect(transport.sent).toEqual(['output 1 0000014040000140400330']);
    expect(ago).toBeGreaterThanOrEqual(1_500_000);
    expect(entries.slice(1, 3)).toEqual(['sent 0 1 0000014040000140400330', `mark 0 sentBefore {"us":[${ago}]}`]);
  });
});
