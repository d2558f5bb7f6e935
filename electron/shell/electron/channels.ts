/** The channels between the preload and the main process; there are no others. */
export const CALL_CHANNEL = 'bench.call';
export const EVENT_CHANNEL = 'bench.event';
/** Saves a file by the system's dialogue: a name to offer, and the bytes. */
export const SAVE_CHANNEL = 'bench.save';
/** Asks for a message port for sample batches; the port arrives on the channel of the same name. */
export const SAMPLES_CHANNEL = 'bench.samples';
