/** Time as the bench sees it: the machine's own, or one that a program moves on by itself. */

export interface Clock {
  /** Whole microseconds of a clock that never runs back; the transports stamp with the same one. */
  micros(): number;
  /** Date and time of day, for the header of a log. */
  now(): Date;
  /** Calls once after so many milliseconds; returns what cancels it. */
  after(millis: number, call: () => void): () => void;
}

export const systemClock: Clock = {
  micros: () => Math.round(performance.now() * 1000),
  now: () => new Date(),
  after(millis, call) {
    const timer = setTimeout(call, millis);
    return () => {
      clearTimeout(timer);
    };
  },
};
