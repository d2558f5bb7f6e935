/** The inputs capture of a survey: the guide of core, told to the screen and to the hand of a simulated pad. */
import type { InputWatch } from '../../../../core/capture/guide/input-watch.ts';
import { InputsGuide } from '../../../../core/capture/guide/inputs-guide.ts';
import { inputWords } from '../../../../core/capture/guide/inputs-list.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { CaptureRun, CaptureView, HandWish, LiveReading } from './capture-run.ts';
import { emptyView } from '../survey-view.ts';
import type { Asked } from '../survey-words.ts';

/** A hand that can be told tries each control so often, and waits so long for it to be seen. */
const TRIES = 2;
const TRY_US = 600_000;

export class InputsCapture implements CaptureRun {
  readonly #guide: InputsGuide;
  readonly #asked: Asked;
  readonly #tries = new Map<InputWatch, number>();
  #trying: InputWatch | null = null;
  #sinceUs = 0;
  #turn = 0;
  #nowUs: number;
  #shown: { readonly version: number; readonly rows: CaptureView['inputs'] } = { version: -1, rows: null };

  constructor(layout: PadLayout, startUs: number, asked: Asked) {
    this.#guide = new InputsGuide(layout);
    this.#nowUs = startUs;
    this.#asked = asked;
  }

  reading(t: number, { slot }: LiveReading): void {
    this.#nowUs = t;
    this.#guide.reading(t, slot);
  }

  advance(t: number): void {
    this.#nowUs = t;
  }

  /** A press among lost reports was not seen: it is missing until it is. */
  gap(): void {
    return undefined;
  }

  /** Nothing is taken that could be dropped: every control can be pressed again. */
  repeat(): void {
    return undefined;
  }

  confirm(): void {
    this.#guide.confirm();
  }

  get isDone(): boolean {
    return this.#guide.isDone;
  }

  get prompt(): string {
    return this.#guide.prompt;
  }

  view(): CaptureView {
    const { version, watches } = this.#guide;
    if (version !== this.#shown.version) this.#shown = { version, rows: watches.map(rowOf) };
    return { ...emptyView(this.#asked, []), inputs: this.#shown.rows };
  }

  /** One control after the other; null once none answers. */
  wish(): HandWish | null {
    const isOpen = this.#trying !== null && this.#trying.missing !== null;
    if (!isOpen || this.#nowUs - this.#sinceUs > TRY_US) this.#tryNext();
    const control = this.#trying?.control;
    if (control === undefined) return null;
    const turn = this.#turn;
    if (control.kind === 'button') return { does: 'press', button: control.usage, turn };
    if (control.kind === 'hat') return { does: 'pressHat', degrees: control.degrees, turn };
    return { does: 'pull', trigger: control.of, turn };
  }

  #tryNext(): void {
    const tried = (watch: InputWatch): number => this.#tries.get(watch) ?? 0;
    const [next] = this.#guide.missing.filter((watch) => tried(watch) < TRIES).sort((a, b) => tried(a) - tried(b));
    this.#trying = next ?? null;
    this.#sinceUs = this.#nowUs;
    if (next === undefined) return;
    this.#turn += 1;
    this.#tries.set(next, tried(next) + 1);
  }
}

function rowOf(watch: InputWatch): NonNullable<CaptureView['inputs']>[number] {
  const { control, isDown, pressed, released, bounceMs, extent, missing } = watch;
  return {
    says: inputWords(control),
    down: isDown,
    pressed,
    released,
    bounceMs,
    extent: extent === null ? null : { ...extent },
    field: control.kind === 'trigger' ? { minimum: control.minimum, maximum: control.maximum } : null,
    missing,
  };
}
