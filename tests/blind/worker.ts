/** A worker of the first edition. */
import { answerAsked } from './answer-asked.ts';
import { judgeUnit } from './judge-unit.ts';

answerAsked(judgeUnit);
