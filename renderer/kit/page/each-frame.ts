/** Draws at most once a frame: the newest state wins, nothing queues. */

/** What the loop needs of the window. */
export interface FrameClock {
  requestAnimationFrame(draw: (millis: number) => void): number;
  cancelAnimationFrame(handle: number): void;
}

/** Calls `draw` before every repaint with the window's time in ms. Returns the function that ends it. */
export function eachFrame(draw: (millis: number) => void, clock: FrameClock = window): () => void {
  let handle = clock.requestAnimationFrame(step);
  function step(millis: number): void {
    handle = clock.requestAnimationFrame(step);
    draw(millis);
  }
  return () => clock.cancelAnimationFrame(handle);
}

/** Lets a call through when at least `everyMillis` have passed since the last: figures that change faster cannot be read. */
export function paced(everyMillis: number, act: (millis: number) => void): (millis: number) => void {
  let last = Number.NEGATIVE_INFINITY;
  return (millis) => {
    if (millis - last < everyMillis) return;
    last = millis;
    act(millis);
  };
}
