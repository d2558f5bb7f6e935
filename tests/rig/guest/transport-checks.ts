/** The product's HID transport against a virtual pad: found, described, read, unplugged, plugged in again, not permitted. */
import { fork } from 'node:child_process';
import { chmodSync } from 'node:fs';
import path from 'node:path';
import { parseDescriptor } from '../../../core/hid/descriptor.ts';
import { toHex } from '../../../core/hid/hex.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import type { Problem } from '../../../core/result.ts';
import { systemClock } from '../../../electron/bench/time/clock.ts';
import { PadWatch } from '../../../electron/transport/watch-pads.ts';
import { BENCH_DESCRIPTOR } from './bench-pad.ts';
import { hidPort, listed, system, transportOf } from './bench-ports.ts';
import { check, sleep, until } from './checks.ts';
import { PAD, type RigPad } from './rig-pad.ts';

export async function checkListing(pad: RigPad): Promise<void> {
  for (const [bus, transport] of [
    [3, 'usb'],
    [5, 'bluetooth'],
  ] as const) {
    await pad.plug(BENCH_DESCRIPTOR, { bus });
    const [found, ...others] = await listed();
    check(
      `a pad on ${transport} is listed with its own words and its descriptor`,
      others.length === 0 &&
        found?.identity.vendorId === PAD.vendorId &&
        found.identity.productId === PAD.productId &&
        found.identity.product === PAD.name &&
        found.identity.serial === PAD.serial &&
        found.identity.transport === transport &&
        found.problem === null &&
        found.descriptor !== null &&
        toHex(found.descriptor) === BENCH_DESCRIPTOR,
      { identity: found?.identity },
    );
    await pad.unplug();
  }
  check('a pad that is gone is not listed', (await listed()).length === 0);
}

export async function checkLayout(pad: RigPad): Promise<void> {
  await pad.plug(BENCH_DESCRIPTOR);
  const descriptor = (await listed())[0]?.descriptor;
  const parsed = descriptor == null ? null : parseDescriptor(descriptor);
  const layout = parsed?.ok === true ? findLayout(parsed.value, null) : null;
  check(
    'both sticks, the hat and the buttons of the pad are found',
    layout?.sticks.left !== undefined &&
      layout.sticks.right !== undefined &&
      layout.hat !== null &&
      layout.buttons.length === 14,
    { noSticks: layout?.noSticks },
  );
  await pad.unplug();
}

/** Unplugged while it is read: told once, as gone; plugged in again it is the same pad and can be read. */
export async function checkUnplug(pad: RigPad): Promise<void> {
  const told: string[][] = [];
  const watch = new PadWatch({
    hid: await hidPort(),
    clock: systemClock,
    system,
    nodes: () => () => undefined,
    onProblem: (problem) => check('the watch lists pads without a problem', false, { problem }),
  });
  watch.start((pads) => told.push(pads.map(({ transport }) => transport.key)));
  await until(() => (told.length > 0 ? true : undefined));
  await pad.plug(BENCH_DESCRIPTOR);
  await until(() => (told.at(-1)?.length === 1 ? true : undefined), 8000);
  const key = told.at(-1)?.[0];
  const [found] = await listed();
  if (found === undefined) {
    check('a pad to unplug is listed', false);
    return;
  }
  const transport = await transportOf(found);
  const lost: Problem[] = [];
  let reports = 0;
  const opened = await transport.open({
    report: () => (reports += 1),
    gap: () => undefined,
    lost: (problem) => lost.push(problem),
  });
  await sleep(60);
  await pad.order({ op: 'stream', hz: 250, count: 100 });
  await pad.event('streamed');
  await sleep(50);
  await pad.unplug();
  await until(() => lost[0]);
  await sleep(300);
  check(
    'a pad unplugged while it is read is told once, as gone',
    opened.ok && lost.length === 1 && lost[0]?.code === 'pad-gone' && reports === 100,
    { lost, reports },
  );
  const sent = await transport.sendOutput(2, new Uint8Array(31));
  check(
    'writing to it afterwards is refused in a sentence',
    !sent.ok && sent.problem.says.endsWith('.'),
    sent.ok ? {} : { says: sent.problem.says },
  );
  await transport.close();
  await until(() => (told.at(-1)?.length === 0 ? true : undefined), 8000);
  check('its leaving is noticed', told.at(-1)?.length === 0);
  await pad.plug(BENCH_DESCRIPTOR);
  await until(() => (told.at(-1)?.length === 1 ? true : undefined), 8000);
  check('plugged in again it is known as the same pad', told.at(-1)?.[0] === key && key !== undefined, { key });
  await watch.close();
  await checkReopened(pad);
  await pad.unplug();
}

async function checkReopened(pad: RigPad): Promise<void> {
  const [found] = await listed();
  const transport = found === undefined ? null : await transportOf(found);
  let reports = 0;
  const opened = await transport?.open({ report: () => (reports += 1), gap: () => undefined, lost: () => undefined });
  await sleep(60);
  await pad.order({ op: 'stream', hz: 250, count: 50 });
  await pad.event('streamed');
  await until(() => (reports === 50 ? true : undefined), 1000);
  check('plugged in again it can be read', opened?.ok === true && reports === 50, { reports });
  await transport?.close();
}

/** Output and feature reports reach the pad and come back as they were sent. */
export async function checkExchange(pad: RigPad): Promise<void> {
  await pad.plug(BENCH_DESCRIPTOR);
  const [found] = await listed();
  const transport = found === undefined ? null : await transportOf(found);
  await transport?.open({ report: () => undefined, gap: () => undefined, lost: () => undefined });
  const bytes = Uint8Array.from({ length: 31 }, (_, index) => index * 7);
  const sent = await transport?.sendOutput(2, bytes);
  const output = await pad.event('output');
  check('an output report arrives as it was sent', sent?.ok === true && output?.['hex'] === `02${toHex(bytes)}`, {
    hex: output?.['hex'],
  });
  const featured = await transport?.sendFeature(4, bytes);
  const back = await transport?.readFeature(4, 31);
  check(
    'a feature report comes back as it was sent',
    featured?.ok === true && back?.ok === true && toHex(back.value) === toHex(bytes),
    { back: back?.ok === true ? toHex(back.value) : back },
  );
  await transport?.close();
  await pad.unplug();
}

/** An ordinary account without rights, with rights to read only, and with both. */
export async function checkPermission(pad: RigPad): Promise<void> {
  const node = await pad.plug(BENCH_DESCRIPTOR);
  for (const [mode, allowed] of [
    [0o600, false],
    [0o644, false],
    [0o666, true],
  ] as const) {
    if (node !== undefined) chmodSync(node, mode);
    const answer = await askAsUser();
    const rights = `0${mode.toString(8)}`;
    if (allowed)
      check(`rights ${rights} let an ordinary account open the pad`, answer.opened && answer.problem === null, {
        ...answer,
      });
    else {
      check(
        `rights ${rights} are told as no permission, with the rule for this pad and where to put it`,
        !answer.opened &&
          answer.problem?.code === 'pad-no-permission' &&
          answer.openProblem?.code === 'pad-no-permission' &&
          answer.rule?.file === '/etc/udev/rules.d/70-stickwright-1209-5711.rules' &&
          answer.rule.text.includes('ATTRS{idVendor}=="1209"'),
        { ...answer },
      );
    }
  }
  await pad.unplug();
}

export interface UserAnswer {
  readonly problem: Problem | null;
  readonly rule: { readonly file: string; readonly text: string } | null;
  readonly opened: boolean;
  readonly openProblem: Problem | null;
}

function askAsUser(): Promise<UserAnswer> {
  const child = fork(path.join(import.meta.dirname, 'open-as-user.js'), [], { uid: 1000, gid: 1000 });
  return new Promise((resolve) => child.once('message', (answer: UserAnswer) => resolve(answer)));
}
