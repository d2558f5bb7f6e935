/** The table at which a hand plays a pad: time goes on from report to report, and marks are written between them. */
import type { LogVisitor } from '../../../core/log/visitor.ts';
import type { Drive } from './one-stick.ts';
import { Pad } from './pad.ts';
import type { Stick } from './stick.ts';
import type { Side, Unit } from './unit.ts';

const FREE: Drive = () => null;

export class Bench {
  readonly unit: Unit;
  readonly pad: Pad;
  readonly #log: LogVisitor;
  #now = 0;
  /** Which stick the hand moves; marks name the left one whatever it moves. */
  moves: Side = 'left';

  constructor(unit: Unit, log: LogVisitor) {
    this.unit = unit;
    this.#log = log;
    this.pad = new Pad(unit, log);
  }

  /** Seconds of the log. */
  get now(): number {
    return this.#now;
  }

  get stick(): Stick {
    return this.pad.sticks[this.moves].stick;
  }

  mark(name: string, detail: Readonly<Record<string, unknown>>): void {
    this.#log.mark({ t: this.pad.markTime(this.#now), name, detail });
  }

  /** A mark of the stick that is surveyed. */
  markStick(name: string, detail: Readonly<Record<string, unknown>> = {}): void {
    this.mark(name, { stick: 'left', ...detail });
  }

  /** Plays so many seconds; `until` ends it early, asked after each report. Says whether it ended early. */
  play(seconds: number, drive: Drive, until: () => boolean = () => false): boolean {
    const end = this.#now + seconds;
    const drives = { left: FREE, right: FREE, [this.moves]: drive };
    while (this.pad.next < end) {
      this.#now = Math.max(this.#now, this.pad.next);
      this.pad.step(drives);
      if (until()) return true;
    }
    this.#now = end;
    return false;
  }

  /** Hands off, from this moment on. */
  leave(seconds: number, until?: () => boolean): boolean {
    this.stick.letGo(this.#now);
    return this.play(seconds, FREE, until);
  }
}
