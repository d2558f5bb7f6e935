/** Short sounds and spoken prompts that lead a survey, so that the eyes can stay on the stick. */

export type Cue = 'asked' | 'taken' | 'done' | 'refused';

/** Pitches in hertz, one after the other. */
const CUES: Readonly<Record<Cue, readonly number[]>> = {
  asked: [587],
  taken: [784],
  done: [587, 784, 1047],
  refused: [294, 220],
};
const NOTE_SECONDS = 0.11;
const LOUDNESS = 0.15;

export class SurveyCues {
  #context: AudioContext | null = null;

  /** Browsers allow sound only after the user has pressed something; call it from such a press. */
  wake(): void {
    this.#context ??= new AudioContext();
    void this.#context.resume();
  }

  play(cue: Cue): void {
    const context = this.#context;
    if (context?.state !== 'running') return;
    CUES[cue].forEach((hertz, index) => {
      const start = context.currentTime + index * NOTE_SECONDS;
      const gain = new GainNode(context, { gain: 0 });
      const voice = new OscillatorNode(context, { type: 'triangle', frequency: hertz });
      voice.connect(gain).connect(context.destination);
      gain.gain.setTargetAtTime(LOUDNESS, start, 0.005);
      gain.gain.setTargetAtTime(0, start + NOTE_SECONDS * 0.7, 0.015);
      voice.start(start);
      voice.stop(start + NOTE_SECONDS + 0.1);
    });
  }

  close(): void {
    void this.#context?.close();
    this.#context = null;
  }
}

/** Says a prompt aloud in place of the one that is being said; does nothing where the system has no voice. */
export function speak(prompt: string): void {
  if (!('speechSynthesis' in window)) return;
  window.speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(prompt);
  words.lang = 'en';
  window.speechSynthesis.speak(words);
}

export function stopSpeaking(): void {
  if ('speechSynthesis' in window) window.speechSynthesis.cancel();
}
