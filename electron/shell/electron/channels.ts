/** The channels between the preload and the main process; there are no others. */
export const CALL_CHANNEL = 'bench.call';
export const EVENT_CHANNEL = 'bench.event';
/** Asks for a message port for sample batches; the port arrives on the channel of the same name. */
export const SAMPLES_CHANNEL = 'bench.samples';
