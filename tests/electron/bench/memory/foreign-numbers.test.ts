/** Every route from a number to a pad's memory: foreign and reported numbers are refused, what is not known is asked, ours go through. */
import { describe, expect, it } from 'vitest';
import { demoPads } from '../../../../core/pad/demo-profile.ts';
import type { PadOwner } from '../../../../core/pad/owner.ts';
import type { Domain } from '../../../../core/pad/stick.ts';
import type { Result } from '../../../../core/result.ts';
import type { Reply, Request } from '../../../../shared/contract.ts';
import { faultImage, faultMap, wanted } from '../../../support/fault-pad.ts';
import { faultBench, read, type FaultBench } from '../fault-bench.ts';
import { follow, makeBench, openFirst, surveyOf, valueOf } from '../make-bench.ts';
import { smallLog } from '../write-log.ts';

type Plan = Reply<'images.plan'>;
type Wish = Request<'images.plan'>['wish'];

interface Source {
  readonly pad: PadOwner | null;
  readonly domain: Domain | null;
}

const SERIAL = 'fault-1';

function owner(part: Partial<PadOwner>): PadOwner {
  return { ...demoPads.sensor, serial: null, unit: null, ...part };
}

/** What the numbers say of their pad, and what must come of it on the pad with the serial number `fault-1` and the unit given. */
function sources(unit: string): readonly (readonly [name: string, source: Source, comes: string])[] {
  const sensor = 'sensor' as const;
  return [
    ['the same serial number', { pad: owner({ serial: SERIAL }), domain: sensor }, 'free'],
    ['the same unit', { pad: owner({ unit }), domain: sensor }, 'free'],
    ['another serial number', { pad: owner({ serial: 'fault-2' }), domain: sensor }, 'numbers-other-pad'],
    ['another unit', { pad: owner({ unit: '00' }), domain: sensor }, 'numbers-other-pad'],
    [
      'our serial number, another unit',
      { pad: owner({ serial: SERIAL, unit: '00' }), domain: sensor },
      'numbers-other-pad',
    ],
    ['another product', { pad: owner({ productId: 0x000b, serial: SERIAL }), domain: sensor }, 'numbers-other-pad'],
    ['the product alone', { pad: owner({}), domain: sensor }, 'unknown-pad'],
    ['a serial number of zeros', { pad: owner({ serial: '000000' }), domain: sensor }, 'unknown-pad'],
    ['nothing', { pad: null, domain: null }, 'unknown-pad'],
    ['reported counts of our pad', { pad: owner({ serial: SERIAL }), domain: 'reported' }, 'numbers-reported'],
    ['reported counts of nobody', { pad: null, domain: 'reported' }, 'numbers-reported'],
  ];
}

/** A survey of such a pad, taken in from a file; a log always names a pad and a domain. */
async function surveyFrom({ made }: FaultBench, { pad, domain }: Source): Promise<string | null> {
  if (pad === null || domain === null) return null;
  const [header = '', ...rest] = smallLog().split('\n');
  const told = { ...(JSON.parse(header) as object), domain, pad: { ...pad, product: 'Pad', transport: 'usb' } };
  const piece = Buffer.from([JSON.stringify(told), ...rest].join('\n')).toString('base64');
  const request = { upload: `s-${JSON.stringify(pad)}-${domain}`.slice(0, 64), name: 'a.padlog', piece, last: true };
  return valueOf(await made.bench.handle('surveys.import', request)).survey?.survey ?? null;
}

async function wishBySurvey(bench: FaultBench, source: Source): Promise<Wish | null> {
  const survey = await surveyFrom(bench, source);
  return survey === null ? null : { store: { layer: 'user', mappings: wanted, from: { survey } } };
}

async function wishByKept({ made }: FaultBench, source: Source): Promise<Wish> {
  const mappings = [{ name: 'mine', product: 'Pad', sticks: wanted, ...source }];
  valueOf(await made.bench.handle('settings.write', { mappings }));
  return { store: { layer: 'user', mappings: wanted, from: { kept: 'mine' } } };
}

function wishByFile({ pad, domain }: Source): Wish {
  return { store: { layer: 'user', mappings: wanted, from: { file: pad, domain } } };
}

type Planner = (bench: FaultBench, image: string, source: Source) => Promise<Result<Plan> | null>;

const plan = (bench: FaultBench, image: string, wish: Wish): Promise<Result<Plan>> =>
  bench.made.bench.handle('images.plan', { image, map: faultMap.id, wish });

const routes: readonly (readonly [string, Planner])[] = [
  [
    'a survey',
    async (bench, image, source) => {
      const wish = await wishBySurvey(bench, source);
      return wish === null ? null : plan(bench, image, wish);
    },
  ],
  [
    'a mapping that was kept under a name',
    async (bench, image, source) => plan(bench, image, await wishByKept(bench, source)),
  ],
  ['a mapping file', (bench, image, source) => plan(bench, image, wishByFile(source))],
  [
    'a patch file',
    async (bench, image, source) => {
      const own = valueOf(await plan(bench, image, wishByFile({ pad: owner({ serial: SERIAL }), domain: 'sensor' })));
      const patch = { ...(JSON.parse(own.patch) as object), ...source };
      return bench.made.bench.handle('images.readPatch', { text: JSON.stringify(patch) });
    },
  ],
];

/** What came of planning and of asking to write: the code of the refusal, or the words that are asked. */
async function outcome(bench: FaultBench, planned: Result<Plan>): Promise<string> {
  if (!planned.ok) return planned.problem.code;
  const { bench: service } = bench.made;
  const asked = valueOf(planned).asks.map(({ code }) => code);
  const wish = { plan: planned.value.plan };
  const preview = valueOf(await service.handle('memory.preview', { pad: bench.handle, wish }));
  expect(preview.asks.map(({ code }) => code)).toEqual(asked);
  if (asked.length === 0) return 'free';
  const before = bench.pad.commands;
  const write = { pad: bench.handle, token: preview.token };
  for (const refused of [
    write,
    { ...write, accepts: [] },
    { ...write, accepts: ['factory', 'wrong-checksum'] as const },
  ])
    expect(await service.handle('memory.write', refused)).toMatchObject({ problem: { code: 'write-not-accepted' } });
  expect(bench.pad.commands).toBe(before);
  return asked.join(' ');
}

it.each(routes)('numbers from %s are judged by whose they are', async (_route, planner) => {
  const bench = await faultBench();
  const image = (await read(bench, bench.handle)).image ?? '';
  const listed = valueOf(await bench.made.bench.handle('pads.list', {}));
  const unit = listed.find(({ pad }) => pad === bench.handle)?.unit ?? '';
  expect(unit).toMatch(/^[0-9a-f]{16}$/u);
  valueOf(await bench.made.bench.handle('memory.allow', { pad: bench.handle, writing: true }));
  for (const [name, source, comes] of sources(unit)) {
    const planned = await planner(bench, image, source);
    if (planned !== null) expect([name, await outcome(bench, planned)]).toEqual([name, comes]);
  }
});

it('what was asked is written once it is accepted by its word, and the confirmation is still good then', async () => {
  const bench = await faultBench();
  const image = (await read(bench, bench.handle)).image ?? '';
  valueOf(await bench.made.bench.handle('memory.allow', { pad: bench.handle, writing: true }));
  const planned = await plan(bench, image, wishByFile({ pad: null, domain: null }));
  expect(await outcome(bench, planned)).toBe('unknown-pad');
  const { bench: service } = bench.made;
  const wish = { plan: valueOf(planned).plan };
  const { token } = valueOf(await service.handle('memory.preview', { pad: bench.handle, wish }));
  const write = { pad: bench.handle, token };
  expect(await service.handle('memory.write', write)).toMatchObject({ problem: { code: 'write-not-accepted' } });
  valueOf(await service.handle('memory.write', { ...write, accepts: ['unknown-pad'] }));
  expect(await bench.ended(bench.handle)).toMatchObject({ end: 'after', problem: null });
});

describe('a patch that was planned for this image', () => {
  it.each([
    ['another serial number', { pad: owner({ serial: 'fault-2' }) }, 'numbers-other-pad'],
    ['reported counts', { domain: 'reported' }, 'numbers-reported'],
  ])('is refused at the pad where it says %s, though nobody knew whose image it was', async (_name, part, code) => {
    const bench = await faultBench();
    // The image is known from a file alone: whose it is shows only at the pad.
    const piece = Buffer.from(bench.pad.image).toString('base64');
    const taken = valueOf(
      await bench.made.bench.handle('images.import', { upload: 'u', name: 'a.bin', piece, last: true }),
    );
    const image = taken.image?.image ?? '';
    const asked = valueOf(await plan(bench, image, wishByFile({ pad: owner({ serial: SERIAL }), domain: 'sensor' })));
    expect(asked.asks.map(({ code: one }) => one)).toEqual(['unknown-pad']);
    const text = JSON.stringify({ ...(JSON.parse(asked.patch) as object), ...part });
    const held = await bench.made.bench.handle('images.readPatch', { text });
    if (!held.ok) {
      expect(held.problem.code).toBe(code);
      return;
    }
    await read(bench, bench.handle);
    valueOf(await bench.made.bench.handle('memory.allow', { pad: bench.handle, writing: true }));
    const wish = { plan: held.value.plan };
    expect(await bench.made.bench.handle('memory.preview', { pad: bench.handle, wish })).toMatchObject({
      ok: false,
      problem: { code },
    });
  });
});

describe('bytes of a kept image', () => {
  const twins = (serials: readonly (string | null)[]): Promise<FaultBench> =>
    faultBench({
      pads: serials.map((serial, index) => ({ image: faultImage(), serial, key: `p${index}`, seed: index + 1 })),
    });

  async function restorePlan(bench: FaultBench): Promise<Result<Plan>> {
    const [, other] = bench.pads;
    if (other === undefined) throw new Error('There is one pad.');
    other.image[0x43] = 0x11;
    const { image: theirs } = await read(bench, await bench.open(other));
    const { image: ours } = await read(bench, bench.handle);
    return plan(bench, ours ?? '', { restore: { image: theirs ?? '', scope: 'calibration' } });
  }

  it('of a pad with another serial number are refused', async () => {
    expect(await restorePlan(await twins(['a', 'b']))).toMatchObject({ problem: { code: 'numbers-other-pad' } });
  });

  it('of a pad without a serial number are told apart by the unit', async () => {
    expect(await restorePlan(await twins([null, null]))).toMatchObject({ problem: { code: 'numbers-other-pad' } });
  });

  it('that came from a file are asked for', async () => {
    const bench = await faultBench();
    const bytes = Uint8Array.from(bench.pad.image);
    bytes[0x43] = 0x11;
    const piece = Buffer.from(bytes).toString('base64');
    const taken = valueOf(
      await bench.made.bench.handle('images.import', { upload: 'u', name: 'a.bin', piece, last: true }),
    );
    const { image } = await read(bench, bench.handle);
    const wish = { restore: { image: taken.image?.image ?? '', scope: 'calibration' as const } };
    const planned = valueOf(await plan(bench, image ?? '', wish));
    expect(planned.asks.map(({ code }) => code)).toContain('unknown-pad');
  });

  it('of the pad itself need no word, and a carry from layer to layer neither', async () => {
    const bench = await faultBench();
    const first = (await read(bench, bench.handle)).image ?? '';
    const wish: Wish = { carry: { from: 'factory', to: 'user', sticks: ['left', 'right'] } };
    expect(valueOf(await plan(bench, first, wish)).asks.map(({ code }) => code)).not.toContain('unknown-pad');
    bench.pad.image[0x43] = 0x11;
    const second = (await read(bench, bench.handle)).image ?? '';
    const back = valueOf(await plan(bench, second, { restore: { image: first, scope: 'calibration' } }));
    expect(back.asks.map(({ code }) => code)).not.toContain('unknown-pad');
  });
});

describe('a carry within an image of which no pad is known', () => {
  const carry: Wish = { carry: { from: 'factory', to: 'user', sticks: ['left', 'right'] } };

  /** Planned on the bytes that another bench read from such a pad, taken in from a file. */
  async function carried(bench: FaultBench, part: (image: Uint8Array) => void): Promise<Plan> {
    const elsewhere = await faultBench();
    const { image } = await read(elsewhere, elsewhere.handle);
    const saved = valueOf(await elsewhere.made.bench.handle('images.export', { image: image ?? '', from: 0 }));
    const bytes = Buffer.from(saved.piece, 'base64');
    part(bytes);
    const piece = bytes.toString('base64');
    const request = { upload: 'u', name: 'a.bin', piece, last: true };
    const taken = valueOf(await bench.made.bench.handle('images.import', request));
    return valueOf(await plan(bench, taken.image?.image ?? '', carry));
  }

  /** What the pad in hand asks, for the plan and for its patch file. */
  async function askedAtThePad(bench: FaultBench, { plan: own, patch, image }: Plan) {
    const { bench: service } = bench.made;
    valueOf(await service.handle('memory.allow', { pad: bench.handle, writing: true }));
    const state = await read(bench, bench.handle);
    const filed = valueOf(await service.handle('images.readPatch', { text: patch }));
    const asked = [];
    for (const held of [own, filed.plan]) {
      const wish = { plan: held };
      asked.push(
        valueOf(await service.handle('memory.preview', { pad: bench.handle, wish })).asks.map((one) => one.code),
      );
    }
    return { isVery: state.image === image, asked };
  }

  it('is free at the pad that holds this very image: its numbers are its own', async () => {
    const bench = await faultBench();
    const planned = await carried(bench, () => undefined);
    expect(planned.asks).toEqual([]);
    expect(await askedAtThePad(bench, planned)).toEqual({ isVery: true, asked: [[], []] });
  });

  it('is asked for at a pad whose image differs by what changes by itself', async () => {
    const bench = await faultBench();
    const planned = await carried(bench, (bytes) => (bytes[faultMap.volatile[0]?.offset ?? 0] = 0xee));
    const asked = await askedAtThePad(bench, planned);
    expect(asked).toEqual({ isVery: false, asked: [['unknown-pad'], ['unknown-pad']] });
  });
});

describe('a survey', () => {
  it('knows the unit of a pad whose memory was read before it', async () => {
    const made = await makeBench();
    const pad = await openFirst(made);
    await follow(made, pad);
    const take = async () => {
      const { survey } = valueOf(
        await made.bench.handle('survey.start', surveyOf(pad, { steps: ['rest'], releases: 1 })),
      );
      await made.until(() => made.states.at(-1)?.survey === survey && made.states.at(-1)?.step === 'done');
      const listed = valueOf(await made.bench.handle('surveys.list', {}));
      return listed.find((one) => one.survey === survey)?.pad;
    };
    const before = await take();
    let isRead = false;
    made.bench.listen('memory.state', ({ end }) => (isRead ||= end === 'read'));
    valueOf(await made.bench.handle('memory.read', { pad }));
    await made.until(() => isRead);
    const after = await take();
    expect([before?.serial, after?.serial]).toEqual(['healthy-1', 'healthy-1']);
    expect(before?.unit).toBeNull();
    expect(after?.unit).toMatch(/^[0-9a-f]{16}$/u);
  });
});
