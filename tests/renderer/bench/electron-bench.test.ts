import { describe, expect, it } from 'vitest';
import { done } from '../../../core/result.ts';
import { electronBench, type PreloadBench } from '../../../renderer/bench/electron-bench.ts';

function setUp() {
  const page = new EventTarget() as unknown as Window;
  const asked: string[] = [];
  const preload: PreloadBench = {
    call: (name) => {
      asked.push(name);
      return Promise.resolve(done({}) as never);
    },
    listen: (name) => {
      asked.push(`listen ${name}`);
      return () => void asked.push(`end ${name}`);
    },
    save: () => Promise.reject(new Error('not asked')),
    openSamples: () => {
      asked.push('openSamples');
      return Promise.resolve();
    },
  };
  function handOver(port: MessagePort, source: unknown = page, data = 'bench.samples'): void {
    const event = new Event('message');
    page.dispatchEvent(Object.assign(event, { source, data, ports: [port] }));
  }
  return { bench: electronBench(preload, page), asked, handOver };
}

describe('the page in Electron', () => {
  it('passes calls and events through the preload', async () => {
    const { bench, asked } = setUp();
    await bench.call('pads.list', {});
    bench.listen('pads.changed', () => undefined)();
    expect(asked).toEqual(['pads.list', 'listen pads.changed', 'end pads.changed']);
  });

  it('asks for the port once, hears batches through it and gives credit for each', async () => {
    const { bench, asked, handOver } = setUp();
    const heard: number[][] = [];
    const end = bench.samples((batch) => heard.push([...batch]));
    bench.samples(() => undefined);
    expect(asked).toEqual(['openSamples']);
    const { port1, port2 } = new MessageChannel();
    const credits: unknown[] = [];
    port1.onmessage = ({ data }) => credits.push(data);
    handOver(port2);
    port1.postMessage(Uint8Array.of(1, 2));
    await expect.poll(() => credits.length).toBe(1);
    end();
    port1.postMessage(Uint8Array.of(3));
    await expect.poll(() => credits.length).toBe(2);
    expect(heard).toEqual([[1, 2]]);
    port1.close();
  });

  it('takes no port from another window', async () => {
    const { bench, handOver } = setUp();
    const heard: unknown[] = [];
    bench.samples((batch) => heard.push(batch));
    const { port1, port2 } = new MessageChannel();
    handOver(port2, {});
    handOver(port2, undefined, 'something else');
    port1.postMessage(Uint8Array.of(1));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(heard).toEqual([]);
    port1.close();
    port2.close();
  });
});
