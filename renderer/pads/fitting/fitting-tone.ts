/** The tone of the fitting aid: one oscillator that is steady inside the tolerance and pulses near it. */
import type { Tone } from './tone-plan.ts';

const LOUDNESS = 0.12;
/** Changes of pitch and loudness glide, so that they do not click. */
const GLIDE_SECONDS = 0.015;

export class FittingTone {
  #context: AudioContext | null = null;
  #voice: OscillatorNode | null = null;
  #gain: GainNode | null = null;
  #pulseStart = 0;

  /** Browsers allow sound only after the user has pressed something; call it from such a press. */
  wake(): void {
    if (this.#context !== null) {
      void this.#context.resume();
      return;
    }
    const context = new AudioContext();
    const gain = new GainNode(context, { gain: 0 });
    const voice = new OscillatorNode(context, { type: 'triangle', frequency: 440 });
    voice.connect(gain).connect(context.destination);
    voice.start();
    this.#context = context;
    this.#voice = voice;
    this.#gain = gain;
    this.#pulseStart = context.currentTime;
  }

  get awake(): boolean {
    return this.#context?.state === 'running';
  }

  /** Called once a frame; null is silence. */
  sound(tone: Tone | null): void {
    const context = this.#context;
    if (context === null || this.#voice === null || this.#gain === null) return;
    const now = context.currentTime;
    if (tone !== null) this.#voice.frequency.setTargetAtTime(tone.hertz, now, GLIDE_SECONDS);
    this.#gain.gain.setTargetAtTime(this.#isOn(tone, now) ? LOUDNESS : 0, now, GLIDE_SECONDS);
  }

  close(): void {
    void this.#context?.close();
    this.#context = null;
    this.#voice = null;
    this.#gain = null;
  }

  #isOn(tone: Tone | null, now: number): boolean {
    if (tone === null) return false;
    if (tone.pulses === 0) return true;
    const period = 1 / tone.pulses;
    while (now - this.#pulseStart >= period) this.#pulseStart += period;
    return now - this.#pulseStart < period / 2;
  }
}
