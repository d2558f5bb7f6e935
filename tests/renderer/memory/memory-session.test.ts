import { describe, expect, test } from 'vitest';
import { done, failed } from '../../../core/result.ts';
import { MemorySession, type About, type SessionState } from '../../../renderer/memory/memory-session.svelte.ts';
import { endWords } from '../../../renderer/memory/session-words.ts';
import { scriptedBench } from '../support/scripted-bench.ts';

const about: About = {
  pad: 'p1',
  protocol: { id: 'bench', name: 'Bench' },
  writing: true,
  mayWrite: true,
  says: null,
  cautions: ['Keep a backup elsewhere.'],
  image: null,
  journal: null,
  map: null,
  rotted: [],
};
const running: SessionState = {
  pad: 'p1',
  doing: 'write',
  step: 'write',
  says: 'Writing block 1 of 3.',
  done: 4,
  of: 12,
  secondsLeft: 2,
  retries: 0,
  writing: true,
  end: null,
  image: null,
  bytes: [],
  problem: null,
};
const preview = { token: 't1', memory: 'm', expiresInSeconds: 60, changes: [], blocks: [], asks: [], cautions: [] };

async function inHand(answers: Parameters<typeof scriptedBench>[0] = {}) {
  const bench = scriptedBench({
    'journals.list': () => done([]),
    'memory.about': () => done(about),
    'memory.latest': () => done({ state: null }),
    'memory.preview': () => done(preview),
    'memory.write': () => done(running),
    ...answers,
  });
  const memory = new MemorySession(bench);
  await memory.follow();
  await memory.take('p1');
  return { bench, memory };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

describe('the memory of the pad in hand', () => {
  test('takes up a session that runs already, e.g. after the page was reloaded', async () => {
    const { memory } = await inHand({ 'memory.latest': () => done({ state: running }) });
    expect(memory.writing).toBe(true);
  });

  test('nothing is written without what was shown, and what was shown counts once', async () => {
    const { bench, memory } = await inHand();
    await memory.confirm([]);
    expect(bench.asked.some(({ name }) => name === 'memory.write')).toBe(false);
    await memory.ask({ plan: 'plan' });
    expect(memory.preview?.token).toBe('t1');
    await memory.confirm([]);
    expect(bench.asked.filter(({ name }) => name === 'memory.write')).toEqual([
      { name: 'memory.write', request: { pad: 'p1', token: 't1', accepts: [] } },
    ]);
    expect(memory.preview).toBeNull();
    expect(memory.writing).toBe(true);
  });

  test('follows the states of this pad alone, and looks again once a session is over', async () => {
    const { bench, memory } = await inHand();
    bench.tell('memory.state', { ...running, pad: 'p2' });
    expect(memory.state).toBeNull();
    bench.tell('memory.state', running);
    const before = bench.asked.filter(({ name }) => name === 'memory.about').length;
    bench.tell('memory.state', { ...running, end: 'after', writing: false });
    await settled();
    expect(memory.running).toBe(false);
    expect(bench.asked.filter(({ name }) => name === 'memory.about')).toHaveLength(before + 1);
  });

  test('a reply that comes after a newer state says nothing new', async () => {
    const { bench, memory } = await inHand();
    await memory.ask({ plan: 'plan' });
    bench.answers['memory.write'] = () => {
      bench.tell('memory.state', { ...running, end: 'after', writing: false });
      return done(running);
    };
    await memory.confirm([]);
    expect(memory.state?.end).toBe('after');
  });

  test('forgets everything of a pad that is put away', async () => {
    const { bench, memory } = await inHand();
    bench.tell('memory.state', running);
    await memory.take(null);
    expect([memory.about, memory.state, memory.preview]).toEqual([null, null, null]);
  });

  test('tells what was refused', async () => {
    const { bench, memory } = await inHand();
    bench.answers['memory.preview'] = () => failed('memory-writing-off', 'Writing is off for this pad; switch it on.');
    await memory.ask({ plan: 'plan' });
    expect(memory.problem?.code).toBe('memory-writing-off');
    expect(memory.preview).toBeNull();
  });
});

test('every end of a session has its sentence, and only one that is whole is called good', () => {
  const kinds = (['read', 'before', 'after', 'differs', 'failed'] as const).map(
    (end) => endWords({ doing: 'write', end }).kind,
  );
  expect(kinds).toEqual(['good', 'plain', 'good', 'bad', 'bad']);
  expect(endWords({ doing: 'show', end: 'after' }).says).toContain('holds what was planned');
});
