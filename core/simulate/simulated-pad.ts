/**
 * A pad that exists in numbers only: hands, sticks, springs, gates, sensors, a converter, a firmware and real report
 * bytes, the same for the same seed. It shares no code with what measures it. All times are passed in.
 */
import type { PadIdentity } from '../pad/identity.ts';
import { demoPads } from '../pad/demo-profile.ts';
import { STICKS, type Pair, type StickId } from '../pad/stick.ts';
import { disturbances, type PadBuild, type StoredLayers } from './build.ts';
import { createChance, type Chance } from './chance.ts';
import { demos, type DemoName } from './demos.ts';
import { reportedByte } from './firmware.ts';
import { plainReport, sensorReport, type ReportContent, type ReportKind } from './reports.ts';
import { SimulatedHand } from './simulated-hand.ts';
import { SimulatedStick } from './simulated-stick.ts';
import { Switches } from './switches.ts';

/** Called for every report; the bytes are lent for the call only. */
export type EmitReport = (atMicros: number, reportId: number, payload: Uint8Array) => void;

const NO_BEND: Pair = { x: 0, y: 0 };

export interface SimulatedPadOptions {
  /** Reports per second; the build's own where it is not given. */
  readonly rateHz?: number;
}

/** One of the named pads, e.g. for a demonstration. */
export function createSimulatedPad(name: DemoName, seed: number, options: SimulatedPadOptions = {}): SimulatedPad {
  return new SimulatedPad(demos[name].build, seed, `${name}-${seed}`, options);
}

export class SimulatedPad {
  readonly identity: PadIdentity;
  readonly descriptor: Uint8Array;
  readonly hand: SimulatedHand;
  readonly #build: PadBuild;
  readonly #kind: ReportKind;
  readonly #payload: Uint8Array;
  readonly #chance: Chance;
  readonly #sticks: Readonly<Record<StickId, SimulatedStick>>;
  readonly #switches: Switches;
  readonly #sentLast: Uint8Array;
  readonly #intervalMicros: number;
  readonly #jitterMicros: number;
  #lastMicros = 0;
  #buttons = 0;
  #sent = 0;
  #nextMicros: number;

  /** `serial` is what the pad answers with as its serial number. */
  constructor(build: PadBuild, seed: number, serial: string, options: SimulatedPadOptions = {}) {
    this.identity = { ...demoPads[build.family], product: build.product, serial, transport: 'simulated' };
    this.#build = build;
    this.#kind = build.family === 'sensor' ? sensorReport : plainReport;
    this.descriptor = this.#kind.descriptor;
    this.#payload = new Uint8Array(this.#kind.byteLength);
    this.#sentLast = new Uint8Array(this.#kind.byteLength);
    this.#chance = createChance(seed, 0);
    this.#switches = new Switches(build.switches ?? [], createChance(seed, 21));
    this.#sticks = {
      left: new SimulatedStick(build.sticks.left, seed, 1),
      right: new SimulatedStick(build.sticks.right, seed, 11),
    };
    this.hand = new SimulatedHand(this.#sticks);
    this.#intervalMicros = options.rateHz === undefined ? build.intervalMicros : 1e6 / options.rateHz;
    this.#jitterMicros = build.jitterMicros * (this.#intervalMicros / build.intervalMicros);
    this.#nextMicros = this.#drawNext();
  }

  /** The time up to which the pad has lived, in whole microseconds from its start. */
  get nowMicros(): number {
    return this.#lastMicros;
  }

  /** What the pad's memory holds of its mappings: the detail of the log's mark `layers`. */
  get layers(): { readonly layers: StoredLayers } {
    return { layers: this.#build.layers ?? { user: null, factory: this.#build.firmware } };
  }

  /** Lets the pad live up to a time, handing over every report on the way, in order. Time never runs back. */
  advance(toMicros: number, emit: EmitReport): void {
    while (this.#nextMicros <= toMicros) {
      this.#live(this.#nextMicros);
      this.#kind.pack(this.#content(), this.#payload);
      if (this.#build.onChange !== true || this.#isNew()) emit(this.#nextMicros, this.#kind.reportId, this.#payload);
      this.#sent += 1;
      this.#nextMicros = Math.max(this.#nextMicros, this.#drawNext());
    }
    if (toMicros > this.#lastMicros) this.#live(toMicros);
  }

  #live(toMicros: number): void {
    const seconds = (toMicros - this.#lastMicros) / 1e6;
    this.#sticks.left.pass(seconds);
    this.#sticks.right.pass(seconds);
    this.hand.pass(seconds);
    this.#buttons = this.#switches.pass(seconds, this.hand.buttons);
    for (const stick of STICKS) this.#sticks[stick].bend(this.#bendOf(stick));
    this.#lastMicros = toMicros;
  }

  /** Of a pad that sends what changed: the report differs from the last one sent, or is the first. */
  #isNew(): boolean {
    if (this.#sent > 0 && this.#payload.every((byte, index) => byte === this.#sentLast[index])) return false;
    this.#sentLast.set(this.#payload);
    return true;
  }

  #bendOf(stick: StickId): Pair {
    const { bends } = this.#build.sticks[stick];
    if (bends === undefined) return NO_BEND;
    let x = 0;
    let y = 0;
    for (const of of disturbances) {
      const bend = bends[of];
      const share = bend === undefined ? 0 : this.hand.disturbs(stick, of);
      x += share * (bend?.x ?? 0);
      y += share * (bend?.y ?? 0);
    }
    return { x, y };
  }

  #drawNext(): number {
    const off = this.#jitterMicros * (2 * this.#chance.next() - 1);
    return Math.round((this.#sent + 1) * this.#intervalMicros + off);
  }

  #content(): ReportContent {
    const left = this.#stickCounts('left');
    const right = this.#stickCounts('right');
    return {
      leftX: left.x,
      leftY: left.y,
      rightX: right.x,
      rightY: right.y,
      leftTrigger: Math.round(255 * this.hand.triggers.left),
      rightTrigger: Math.round(255 * this.hand.triggers.right),
      hat: this.hand.hat,
      buttons: this.#buttons,
    };
  }

  #stickCounts(stick: StickId): { x: number; y: number } {
    const counts = this.#sticks[stick].read();
    if (this.#build.family === 'sensor') return counts;
    const stored = this.#build.firmware[stick];
    return { x: reportedByte(counts.x, stored.x), y: reportedByte(counts.y, stored.y) };
  }
}
