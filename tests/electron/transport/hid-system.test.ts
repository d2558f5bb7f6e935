import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { hidSystem } from '../../../electron/transport/hid-system.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

describe('what the system says of a device', () => {
  it('reads the descriptor and the bus from sysfs on Linux', async () => {
    const sysfs = await temporaryFolder();
    const folder = path.join(sysfs, 'hidraw4', 'device');
    await mkdir(folder, { recursive: true });
    await writeFile(path.join(folder, 'report_descriptor'), Uint8Array.of(5, 1, 9, 5));
    await writeFile(path.join(folder, 'uevent'), 'DRIVER=hid-generic\nHID_ID=0005:00001209:0000AB01\nHID_NAME=x\n');
    const system = hidSystem('linux', sysfs);
    expect(await system.facts('/dev/hidraw4')).toEqual({ descriptor: Uint8Array.of(5, 1, 9, 5), bus: 5 });
    expect(await system.facts('/dev/hidraw5')).toEqual({ descriptor: null, bus: null });
  });

  it('finds out what stands against opening a node without opening it', async () => {
    const folder = await temporaryFolder();
    const node = path.join(folder, 'hidraw0');
    await writeFile(node, '');
    const system = hidSystem('linux');
    expect(await system.refusal(node)).toBeNull();
    expect(await system.refusal(path.join(folder, 'hidraw1'))).toMatchObject({ code: 'ENOENT' });
  });

  it('knows nothing on other systems', async () => {
    const system = hidSystem('darwin');
    expect(await system.facts('DevSrvsID:1')).toEqual({ descriptor: null, bus: null });
    expect(await system.refusal('DevSrvsID:1')).toBeNull();
  });
});
