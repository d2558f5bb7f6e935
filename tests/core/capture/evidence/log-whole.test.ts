import { describe, expect, it } from 'vitest';
import { TrackBuilder } from '../../../../core/capture/evidence/build-track.ts';
import { isEnded } from '../../../../core/capture/evidence/log-whole.ts';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import type { Track } from '../../../../core/capture/evidence/track.ts';
import { judgeTrack } from '../../../../core/findings/judge-track.ts';
import { measureTable } from '../../../../core/measure/measure-table.ts';
import { formatHeader, formatMark, formatReport } from '../../../../core/log/format.ts';
import { LogReader } from '../../../../core/log/reader.ts';
import { createSimulatedPad } from '../../../../core/simulate/simulated-pad.ts';
import { simulatedHeader } from '../../../support/simulated-header.ts';

const header = simulatedHeader(createSimulatedPad('healthy', 1));
const begin = formatMark(1, 'capture', { purpose: 'rest', stick: 'left', edge: 'begin' });
const end = formatMark(5, 'capture', { purpose: 'rest', stick: 'left', edge: 'end' });
const last = formatMark(6, 'end', {});
const damagedMark = end.replace('["m"', '["M"');

function read(head: object, ...lines: readonly string[]): Track {
  const builder = new TrackBuilder();
  const reader = new LogReader(builder);
  let report = '';
  createSimulatedPad('healthy', 1).advance(20_000, (_, id, payload) => (report ||= formatReport(2, id, payload)));
  const [first = '', ...rest] = lines;
  reader.push(new TextEncoder().encode([formatHeader({ ...header, ...head }), first, report, ...rest].join('')));
  expect(reader.end().ok).toBe(true);
  const track = builder.finish();
  if (!track.ok) throw new Error(track.problem.says);
  return track.value;
}

const marking = { endMark: true };
const foreign = { program: null };

describe('the end of a log', () => {
  it.each([
    ['is there with its mark', true, marking, [begin, end, last]],
    ['is there with its mark, whoever wrote the log', true, foreign, [begin, end, last]],
    ['is missing where the mark should be', false, marking, [begin, end]],
    ['is missing where the mark was damaged', false, marking, [begin, end, last.replace('["m"', '["q"')]],
    ['is missing where a capture is open', false, {}, [begin]],
    ['is missing where the end of the last capture was damaged', false, {}, [begin, damagedMark]],
    ['cannot be told where the captures are closed', null, {}, [begin, end]],
    ['cannot be told of a recording without marks', null, {}, []],
    ['cannot be told of a recording from elsewhere', null, foreign, [begin]],
  ] as const)('%s', (_, is, head, lines) => {
    const track = read(head, ...lines);
    expect(isEnded(track)).toBe(is);
    const report = judgeTrack(track, null);
    expect(report.log.ended).toBe(is);
    const said = report.sticks.left?.lacks.map(({ code }) => code) ?? [];
    expect(said.includes('log-not-ended')).toBe(is === false);
    const rows = measureTable(report)[0]?.rows.map(({ label, value }) => `${label} ${value}`) ?? [];
    expect(rows.join('\n')).toContain(`ended in order ${is === null ? 'not known' : is ? 'yes' : 'no'}`);
  });
});

describe('damaged lines of a log', () => {
  it('are counted, and said of every stick, in the report and in what the app shows', () => {
    const track = read(marking, begin, damagedMark, '{"t":1}\n', '["m",5,"ca\n', last);
    const report = judgeTrack(track, null);
    expect(report.log).toMatchObject({ damaged: 3, ended: true });
    for (const stick of ['left', 'right'] as const) {
      const says = gatherEvidence(track, stick, 12).lacks?.find(({ code }) => code === 'log-damaged')?.says;
      expect(says).toMatch(/^3 lines of the log are damaged and left out, the first is line 4: /u);
      expect(report.sticks[stick]?.lacks.map((one) => one.says)).toContain(says);
    }
  });

  it('are none where nothing is damaged', () => {
    const report = judgeTrack(read(marking, begin, end, last), null);
    expect(report.log.damaged).toBe(0);
    expect(report.sticks.left?.lacks.map(({ code }) => code)).not.toContain('log-damaged');
  });
});

describe('reports of a log that cannot count as they stand', () => {
  it('are said of every stick where they stand twice', () => {
    const twice = [formatReport(5, 9, Uint8Array.of(1)), formatReport(5, 9, Uint8Array.of(1))];
    for (const stick of ['left', 'right'] as const) {
      const lacks = gatherEvidence(read(marking, begin, ...twice, last), stick).lacks ?? [];
      expect(lacks.find(({ code }) => code === 'log-repeated')?.says).toMatch(
        /^1 line of the log stands there twice, of the same microsecond, and counts once: /u,
      );
    }
  });

  it('are said of every stick where some could not be read and others could', () => {
    const track = {
      ...read(marking, begin, end, last),
      unread: { reports: 3, first: { code: 'cut', says: 'Too short.' } },
    };
    const lacks = gatherEvidence(track, 'left').lacks ?? [];
    expect(lacks.find(({ code }) => code === 'reports-unread')?.says).toBe(
      '3 reports could not be read and are left out. Too short.',
    );
    const one = { ...track, unread: { ...track.unread, reports: 1 } };
    expect((gatherEvidence(one, 'right').lacks ?? []).map(({ says }) => says)).toContain(
      '1 report could not be read and is left out. Too short.',
    );
  });
});
