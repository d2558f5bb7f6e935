/** A worker of the second edition. */
import { answerAsked } from '../answer-asked.ts';
import { judgeDraw } from './judge-draw.ts';

answerAsked(judgeDraw);
