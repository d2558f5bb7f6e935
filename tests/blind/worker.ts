/** Judges the cases that it is sent, one after the other. */
import { parentPort } from 'node:worker_threads';
import { judgeUnit, type BlindCase } from './judge-unit.ts';

parentPort?.on('message', (one: { readonly id: number; readonly blind: BlindCase }) => {
  parentPort?.postMessage({ id: one.id, answer: judgeUnit(one.blind) });
});
