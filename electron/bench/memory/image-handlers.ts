/** The calls around kept images and memory maps: everything that needs no pad. */
import { foundMap } from '../../../core/image/found-map.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { done, type Result } from '../../../core/result.ts';
import type { CallName, Reply, Request } from '../../../shared/contract.ts';
import type { Vault } from '../../store/image-vault.ts';
import type { Handlers } from '../calls/call-handlers.ts';
import type { ImageWork } from './image-work.ts';
import { ImageImport } from './image-import.ts';
import { measuredOf } from '../measure/log-answers.ts';
import type { KnownMaps } from './known-maps.ts';
import type { MeasureThread } from '../measure/measure-thread.ts';

type ImageCall = Extract<CallName, `images.${string}` | `maps.${string}`>;

export interface ImagePorts {
  readonly images: ImageWork;
  readonly vault: Vault;
  readonly maps: KnownMaps;
  readonly measures: MeasureThread;
  /** The list of kept images has changed. */
  readonly tellImages: () => Promise<unknown>;
  readonly tellMaps: () => Promise<unknown>;
  readonly now: () => Date;
  readonly openSurvey: (survey: string) => Promise<Result<Reply<'surveys.open'>>>;
}

export function imageHandlers(ports: ImagePorts): Handlers<Exclude<ImageCall, 'maps.prove'>> {
  const { images, vault, maps, measures, now, tellImages, tellMaps } = ports;
  const imports = new ImageImport(vault, now);
  const told = async <T>(result: Result<T>): Promise<Result<T>> => {
    if (result.ok) await tellMaps();
    return result;
  };

  return {
    'images.list': () => images.list(),
    'images.import': async (request) => {
      const taken = await imports.take(request);
      if (!taken.ok) return taken;
      if (taken.value === null) return done({ image: null });
      await tellImages();
      const image = await images.summary(taken.value.sha256);
      return image.ok ? done({ image: image.value }) : image;
    },
    'images.export': (request) => images.export(request),
    'images.open': (request) => images.open(request),
    'images.compare': (request) => images.compare(request),
    'images.plan': (request) => images.plan(request),
    'images.readPatch': ({ text }) => images.readPatch(text),
    'images.apply': async ({ plan }) => {
      const applied = await images.apply(plan);
      if (applied.ok) await tellImages();
      return applied;
    },
    'images.find': async ({ image, by }) => {
      const bytes = await vault.read(image);
      if (!bytes.ok) return bytes;
      const measured = 'values' in by ? done(by.values) : await measuredIn(ports, by.survey);
      if (!measured.ok) return measured;
      const places = await measures.find(bytes.value, measured.value);
      return places.ok ? done({ measured: measured.value, places: places.value }) : places;
    },
    'maps.list': async () => done(await maps.list()),
    'maps.add': async ({ text }) => told(await maps.add(text)),
    'maps.save': async ({ image, ...wish }) => {
      const bytes = await vault.read(image);
      if (!bytes.ok) return bytes;
      const map = foundMap(wish, bytes.value);
      return map.ok ? told(await maps.save(map.value)) : map;
    },
  };
}

async function measuredIn(
  { openSurvey }: ImagePorts,
  survey: Request<'surveys.open'>['survey'],
): Promise<Result<PadMapping>> {
  const opened = await openSurvey(survey);
  if (!opened.ok) return opened;
  return measuredOf(opened.value.sticks);
}
