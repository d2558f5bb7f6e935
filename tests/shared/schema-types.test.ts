/** Schemas that say what an interface of core says: held equal by the compiler, both ways. */
import { expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { MeasureReport } from '../../core/findings/judge-track.ts';
import type { PatchAsk } from '../../core/image/ask.ts';
import type { DecodedLayer } from '../../core/image/decode-layers.ts';
import type { FoundMapWish } from '../../core/image/found-map.ts';
import type { ImageComparison } from '../../core/image/compare-images.ts';
import type { LayerName } from '../../core/image/memory-map.ts';
import type { Change } from '../../core/image/patch.ts';
import type { RestoreScope } from '../../core/image/plan-restore.ts';
import type { FoundPlace } from '../../core/image/found-place.ts';
import type { HostView } from '../../core/image/who-reads.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { PadIdentity } from '../../core/pad/identity.ts';
import type { Pair, StickId } from '../../core/pad/stick.ts';
import type { Problem } from '../../core/result.ts';
import type { ProposalWish, Reason } from '../../core/proposal/proposal.ts';
import type { stickEvidenceSchema } from '../../shared/evidence-schemas.ts';
import type * as image from '../../shared/image-schemas.ts';
import type { measureReportSchema } from '../../shared/report-schemas.ts';
import type * as plain from '../../shared/schemas.ts';

/** Read-only at every depth on both sides: who may write is no part of what crosses. */
type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;
type Said<S extends z.ZodType> = Frozen<z.infer<S>>;

it('a key that core gains or loses does not compile: reports and evidence', () => {
  expectTypeOf<Said<typeof measureReportSchema>>().toEqualTypeOf<Frozen<MeasureReport>>();
  expectTypeOf<Said<typeof stickEvidenceSchema>>().toEqualTypeOf<Frozen<StickEvidence>>();
});

it('nor does one of pads, mappings and proposals', () => {
  expectTypeOf<Said<typeof plain.problemSchema>>().toEqualTypeOf<Frozen<Problem>>();
  expectTypeOf<Said<typeof plain.stickIdSchema>>().toEqualTypeOf<StickId>();
  expectTypeOf<Said<typeof plain.identitySchema>>().toEqualTypeOf<Frozen<PadIdentity>>();
  expectTypeOf<Said<typeof plain.pairSchema>>().toEqualTypeOf<Frozen<Pair>>();
  expectTypeOf<Said<typeof plain.stickMappingSchema>>().toEqualTypeOf<Frozen<StickMapping>>();
  expectTypeOf<Said<typeof plain.proposalWishSchema>>().toEqualTypeOf<
    Frozen<Pick<ProposalWish, 'aim' | 'centreBy' | 'guard'>>
  >();
  expectTypeOf<Said<typeof plain.proposalReplySchema>['reasons'][number]>().toEqualTypeOf<Frozen<Reason>>();
});

it('nor does one of memory images', () => {
  type Details = Said<typeof image.imageDetailsSchema>;
  expectTypeOf<Details['layers'][number]>().toEqualTypeOf<Frozen<DecodedLayer>>();
  expectTypeOf<Details['hosts'][number]>().toEqualTypeOf<Frozen<HostView>>();
  expectTypeOf<Said<typeof image.layerNameSchema>>().toEqualTypeOf<LayerName>();
  expectTypeOf<Said<typeof image.changeSchema>>().toEqualTypeOf<Frozen<Change>>();
  expectTypeOf<Said<typeof image.askSchema>>().toEqualTypeOf<Frozen<PatchAsk>>();
  expectTypeOf<Said<typeof image.imageComparisonSchema>>().toEqualTypeOf<Frozen<ImageComparison>>();
  expectTypeOf<Said<typeof image.foundPlaceSchema>>().toEqualTypeOf<Frozen<FoundPlace>>();
  expectTypeOf<Omit<Said<typeof image.mapWishSchema>, 'image'>>().toEqualTypeOf<Frozen<FoundMapWish>>();
  type Restore = Extract<Said<typeof image.planWishSchema>, { restore: unknown }>;
  expectTypeOf<Restore['restore']['scope']>().toEqualTypeOf<RestoreScope>();
});
