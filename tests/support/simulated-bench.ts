/** A simulated pad on the bench: what its hand does is recorded with the marks of a survey, through the product's own decoding. */
import { TrackBuilder } from '../../core/capture/evidence/build-track.ts';
import type { Track } from '../../core/capture/evidence/track.ts';
import { findProfile } from '../../core/pad/profiles.ts';
import type { PadBuild, StickBuild } from '../../core/simulate/build.ts';
import { demos } from '../../core/simulate/demos.ts';
import { SimulatedPad } from '../../core/simulate/simulated-pad.ts';
import { releaseDirection } from '../../core/capture/guide/release-directions.ts';
import { simulatedHeader } from './simulated-header.ts';

export class SimulatedBench {
  readonly pad: SimulatedPad;
  readonly #builder = new TrackBuilder();
  #isHeard = true;

  constructor(build: PadBuild, seed = 1) {
    this.pad = new SimulatedPad(build, seed, 'bench');
    const profile = findProfile(this.pad.identity.vendorId, this.pad.identity.productId);
    this.#builder.header({
      ...simulatedHeader(this.pad),
      domain: profile?.domain ?? 'reported',
      profile: profile?.id ?? null,
    });
    this.wait(0.3);
  }

  mark(name: string, detail: Record<string, unknown> = {}): void {
    this.#builder.mark({ t: this.pad.nowMicros, name, detail: { stick: 'left', ...detail } });
  }

  wait(seconds: number): void {
    this.pad.advance(this.pad.nowMicros + Math.round(seconds * 1e6), (t, id, bytes) => {
      if (this.#isHeard) this.#builder.report(t, id, bytes);
    });
  }

  /** Reports of this time are lost. */
  lose(seconds: number): void {
    this.#isHeard = false;
    this.wait(seconds);
    this.#isHeard = true;
    this.#builder.gap(this.pad.nowMicros, null);
  }

  untilLetGo(): void {
    do this.wait(0.02);
    while (this.pad.hand.holds('left'));
  }

  capture(purpose: string, act: () => void, detail: Record<string, unknown> = {}): void {
    this.mark('capture', { purpose, ...detail, edge: 'begin' });
    act();
    this.mark('capture', { purpose, ...detail, edge: 'end' });
    this.wait(0.1);
  }

  /** Pushed in spread directions and let go, a second each. */
  releases(count: number, seconds = 1): void {
    for (let release = 0; release < count; release += 1) {
      this.pad.hand.pushAndLetGo('left', releaseDirection(release));
      this.untilLetGo();
      this.mark('release');
      this.wait(seconds);
    }
  }

  sweeps(angles: readonly number[]): void {
    for (const angle of angles) {
      this.mark('toward', { angle });
      this.pad.hand.sweep('left', angle);
      this.untilLetGo();
      this.wait(0.3);
    }
  }

  flicks(angles: readonly number[]): void {
    for (const angle of angles) {
      this.mark('toward', { angle });
      this.pad.hand.flick('left', angle);
      this.untilLetGo();
      this.mark('release');
      this.wait(0.8);
    }
  }

  track(): Track {
    const track = this.#builder.finish();
    if (!track.ok) throw new Error(track.problem.says);
    return track.value;
  }
}

/** The sound pad with another left stick. */
export function soundBut(change: (left: StickBuild) => Partial<StickBuild>, pad: Partial<PadBuild> = {}): PadBuild {
  const { build } = demos.healthy;
  const { left } = build.sticks;
  return { ...build, ...pad, sticks: { ...build.sticks, left: { ...left, ...change(left) } } };
}
