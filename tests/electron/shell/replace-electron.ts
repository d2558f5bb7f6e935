/** Puts the stand-in in the place of the `electron` module, for this process and everything it loads from now on. */
import { registerHooks } from 'node:module';

const standIn = new URL('./electron-stand-in.ts', import.meta.url).href;

registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron' ? { url: standIn, shortCircuit: true } : next(specifier, context),
});
