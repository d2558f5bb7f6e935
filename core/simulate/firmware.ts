/** What a pad's own firmware makes of a sensor count before it reports it in eight bits. */

/**
 * The stored mapping, limited, on 0 … 255. There is no whole middle: no deflection is 127.5 and rounds up to 128.
 */
export function reportedByte(count: number, stored: { min: number; centre: number; max: number }): number {
  const span = count >= stored.centre ? stored.max - stored.centre : stored.centre - stored.min;
  const deflection = Math.min(1, Math.max(-1, (count - stored.centre) / span));
  return Math.min(255, Math.max(0, Math.round(127.5 + 127.5 * deflection)));
}
