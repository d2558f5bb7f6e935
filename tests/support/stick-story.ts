/** Tells a track reading by reading at 1 kHz: where the left stick stands, with marks and buttons. No noise unless told. */
import type { SwitchTrack, Track } from '../../core/capture/evidence/track.ts';
import type { Mark } from '../../core/log/visitor.ts';
import type { Pair } from '../../core/pad/stick.ts';
import { sensorFields } from './fields.ts';
import { makeTrack } from './make-track.ts';

export class StickStory {
  readonly #points: { readonly t: number; readonly x: number; readonly y: number; readonly down: number }[] = [];
  readonly #marks: Mark[] = [];
  readonly #presses: { readonly t: number; readonly down: number }[] = [{ t: 0, down: 0 }];
  readonly #stepUs: number;
  #down = 0;

  constructor(stepUs = 1000) {
    this.#stepUs = stepUs;
  }

  get nowUs(): number {
    return this.#stepUs * this.#points.length;
  }

  mark(name: string, detail: Record<string, unknown> = {}): this {
    this.#marks.push({ t: this.nowUs, name, detail: { stick: 'left', ...detail } });
    return this;
  }

  capture(purpose: string, tell: () => void, detail: Record<string, unknown> = {}): this {
    this.mark('capture', { purpose, edge: 'begin', ...detail });
    tell();
    return this.mark('capture', { purpose, edge: 'end', ...detail });
  }

  /** Raw counts by the seconds since the call. */
  move(seconds: number, place: (seconds: number) => Pair): this {
    const steps = Math.round((seconds * 1e6) / this.#stepUs);
    for (let step = 0; step < steps; step += 1)
      this.#points.push({ t: this.nowUs, down: this.#down, ...place((step * this.#stepUs) / 1e6) });
    return this;
  }

  hold(seconds: number, place: Pair): this {
    return this.move(seconds, () => place);
  }

  press(isDown: boolean): this {
    this.#down = isDown ? 1 : 0;
    this.#presses.push({ t: this.nowUs, down: this.#down });
    return this;
  }

  /** `click`: the button that clicks the stick in is the one that was pressed. */
  track(click = true): Track {
    const points = this.#points;
    const button: SwitchTrack = {
      usage: 11,
      t: Float64Array.from(this.#presses, ({ t }) => t),
      down: Uint8Array.from(this.#presses, ({ down }) => down),
    };
    const empty = makeTrack({ marks: this.#marks, reportTimes: points.map(({ t }) => t) });
    return {
      ...empty,
      layout: { ...empty.layout, clicks: click ? { left: 11 } : {} },
      sticks: {
        left: {
          fields: sensorFields,
          t: Float64Array.from(points, ({ t }) => t),
          x: Float64Array.from(points, ({ x }) => x),
          y: Float64Array.from(points, ({ y }) => y),
          buttonDown: Uint8Array.from(points, ({ down }) => down),
        },
      },
      inputs: { buttons: [button], hat: null, triggers: {} },
    };
  }
}
