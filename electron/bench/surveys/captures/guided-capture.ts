/** A capture that a guide of core leads: told to the screen, and to the hand of a simulated pad. */
import type { CaptureRun, CaptureView, HandWish, LiveReading } from './capture-run.ts';

/** What every guide of one stick can be told and asked. */
export interface StickGuide {
  readonly isDone: boolean;
  readonly prompt: string;
  advance(t: number): void;
  gap(): void;
  repeat(t: number): void;
}

/** What is this guide's own. */
export interface Telling {
  reading(t: number, reading: LiveReading): void;
  /** What its captures hold, beside what the survey had before. */
  view(): Partial<CaptureView>;
  wish(): HandWish | null;
  /** Left out where everything is taken by itself and there is nothing to confirm. */
  confirm?(): void;
}

export function guidedCapture(guide: StickGuide, before: () => CaptureView, telling: Telling): CaptureRun {
  return {
    reading: (t, reading) => telling.reading(t, reading),
    advance: (t) => guide.advance(t),
    gap: () => guide.gap(),
    repeat: (t) => guide.repeat(t),
    confirm: () => telling.confirm?.(),
    get isDone() {
      return guide.isDone;
    },
    get prompt() {
      return guide.prompt;
    },
    view: () => ({ ...before(), ...telling.view() }),
    wish: () => telling.wish(),
  };
}

/** Where a release is pushed to; null while there is nothing to push toward. */
export function pushedToward(guide: { readonly phase: string; readonly toward: number | null }): number | null {
  return guide.phase === 'waiting' || guide.phase === 'pushing' ? guide.toward : null;
}

/** The same wish toward each direction, once the guide waits for it. */
export function wishToward<Does extends 'pushAndLetGo' | 'sweep' | 'flick'>(
  does: Does,
  { phase, toward }: { readonly phase: string; readonly toward: number | null },
): { readonly does: Does; readonly toward: number } | null {
  return phase === 'waiting' && toward !== null ? { does, toward } : null;
}
