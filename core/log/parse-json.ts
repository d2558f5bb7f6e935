/** JSON text to a value, where what cannot be read is told in one plain clause. */
import { done, failed, type Result } from '../result.ts';

/** `says` is a clause that a caller's sentence takes in: "it holds NaN, which JSON has no word for." */
export function parseJson(text: string): Result<unknown> {
  try {
    return done(JSON.parse(text) as unknown);
  } catch (error) {
    // Anything but a syntax error is a defect of this program and must not pass as one of the file.
    if (!(error instanceof SyntaxError)) throw error;
    const word = /(?<![\w"])(NaN|-?Infinity)(?![\w"])/.exec(text)?.[1];
    if (word !== undefined) return failed('json-not-a-number', `it holds ${word}, which is not a number.`);
    return failed('json-syntax', 'it is not valid JSON.');
  }
}
