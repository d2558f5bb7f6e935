import { describe, expect, it } from 'vitest';
import { TrackBuilder } from '../../../../core/capture/evidence/build-track.ts';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import type { Track } from '../../../../core/capture/evidence/track.ts';
import { formatGap, formatHeader, formatMark, formatReport } from '../../../../core/log/format.ts';
import type { LogHeader } from '../../../../core/log/header.ts';
import { LogReader } from '../../../../core/log/reader.ts';
import type { Result } from '../../../../core/result.ts';
import { plainHeader } from '../guide/hand-script.ts';

/** A game pad without report ids: X, Y, Z, Rz of 8 bits, then 8 buttons. */
const FOUR_AXES = '05010905a1010930093109320935150026ff00750895048102050919012908150025017501950881' + '02c0';
/** Report 1: six vendor bytes; report 2: X, Y, Z, Rz of 8 bits. */
const AXES_ELSEWHERE =
  '05010905a10185010600ff0920150026ff00750895068102' + '850205010930093109320935150026ff00750895048102c0';
/** X and Y of 8 bits, 1 … 255, with a null state. */
const WITH_NULL = '05010905a10109300931150126ff00750895028142c0';

function build(header: Partial<LogHeader>, lines: readonly string[] = []): Result<Track> {
  const builder = new TrackBuilder();
  const reader = new LogReader(builder);
  const text = formatHeader({ ...plainHeader, ...header }) + lines.join('');
  const pushed = reader.push(new Uint8Array(Buffer.from(text)));
  return pushed.ok ? builder.finish() : pushed;
}

function track(header: Partial<LogHeader>, lines: readonly string[] = []): Track {
  const built = build(header, lines);
  if (!built.ok) throw new Error(built.problem.says);
  return built.value;
}

function report(t: number, bytes: readonly number[], id = 0): string {
  return formatReport(t, id, Uint8Array.from(bytes));
}

describe('TrackBuilder', () => {
  it('puts the readings of both sticks into columns and keeps marks and gaps', () => {
    const { sticks, reportTimes, marks, gaps } = track({ descriptor: FOUR_AXES }, [
      report(0, [1, 2, 3, 4, 0]),
      formatMark(5, 'release', { stick: 'left' }),
      report(1000, [5, 6, 7, 8, 1]),
      formatGap(1500, 3),
      report(2000, [9, 10, 11, 12, 0]),
    ]);
    expect(sticks.left).toEqual({
      fields: { x: { minimum: 0, maximum: 255, up: 1 }, y: { minimum: 0, maximum: 255, up: -1 } },
      t: Float64Array.of(0, 1000, 2000),
      x: Float64Array.of(1, 5, 9),
      y: Float64Array.of(2, 6, 10),
      buttonDown: Uint8Array.of(0, 1, 0),
    });
    expect([...(sticks.right?.x ?? [])]).toEqual([3, 7, 11]);
    expect([...(sticks.right?.y ?? [])]).toEqual([4, 8, 12]);
    expect([...reportTimes]).toEqual([0, 1000, 2000]);
    expect(marks).toEqual([{ t: 5, name: 'release', detail: { stick: 'left' } }]);
    expect(gaps).toEqual([{ t: 1500, lost: 3 }]);
  });

  it('takes a report that stands twice, to the microsecond and the byte, once, and counts it', () => {
    const { repeated, duplicates, sticks, reportTimes } = track({ descriptor: AXES_ELSEWHERE }, [
      report(0, [1, 2, 3, 4], 2),
      report(0, [1, 2, 3, 4], 2),
      report(1, [1, 2, 3, 5], 2),
      report(2, [1, 2, 3, 5], 2),
      report(2, [1, 2, 3, 5], 2),
      report(3, [1, 2, 3, 5, 0, 0], 1),
    ]);
    expect({ repeated, duplicates }).toEqual({ repeated: 2, duplicates: 1 });
    expect([...(sticks.left?.t ?? [])]).toEqual([0, 1, 2]);
    expect([...reportTimes]).toEqual([0, 1, 2, 3]);
  });

  it('takes every report, and counts none as standing twice, of a clock in whose steps two that differ came', () => {
    const { repeated, reportTimes } = track({ descriptor: FOUR_AXES }, [
      report(0, [1, 2, 3, 4, 0]),
      report(15_000, [1, 2, 3, 4, 0]),
      report(15_000, [1, 2, 3, 5, 0]),
      report(15_000, [1, 2, 3, 5, 0]),
      report(30_000, [1, 2, 3, 5, 0]),
    ]);
    expect(repeated).toBe(0);
    expect([...reportTimes]).toEqual([0, 15_000, 15_000, 15_000, 30_000]);
  });

  it('takes a mark that stands twice once, and counts it', () => {
    const toward = (t: number, angle: number): string => formatMark(t, 'toward', { stick: 'left', angle });
    const lines = [report(0, [1, 2, 3, 4, 0]), toward(5, 0), toward(5, 0), toward(5, 90), toward(6, 90)];
    const { marks, repeated } = track({ descriptor: FOUR_AXES }, lines);
    expect(marks.map(({ t, detail }) => [t, detail['angle']])).toEqual([
      [5, 0],
      [5, 90],
      [6, 90],
    ]);
    expect(repeated).toBe(1);
  });

  it('counts reports equal to the one before, byte for byte and of the same id', () => {
    const { duplicates } = track({ descriptor: AXES_ELSEWHERE }, [
      report(0, [1, 2, 3, 4], 2),
      report(1, [1, 2, 3, 4], 2),
      report(2, [1, 2, 3, 5], 2),
      report(3, [1, 2, 3, 5, 0, 0], 1),
      report(4, [1, 2, 3, 5, 0, 0], 1),
      report(5, [1, 2, 3, 5], 2),
    ]);
    expect(duplicates).toBe(2);
  });

  it('takes readings only from reports that are readings', () => {
    const { sticks, reportTimes } = track({ descriptor: AXES_ELSEWHERE }, [
      report(0, [1, 2, 3, 4, 5, 6], 1),
      report(1000, [7, 8, 9, 10], 2),
      report(2000, [1], 77),
    ]);
    expect([...(sticks.left?.t ?? [])]).toEqual([1000]);
    expect(reportTimes).toHaveLength(3);
  });

  it('says so where the reports that come name no axes', () => {
    const built = track({ descriptor: AXES_ELSEWHERE }, [report(0, [1, 2, 3, 4, 5, 6], 1)]);
    expect(built.sticks).toEqual({});
    const [lack] = gatherEvidence(built, 'left').lacks ?? [];
    expect(lack?.code).toBe('no-stick');
    expect(lack?.says).toMatch(/axes/);
  });

  it('leaves a reading in the null state out', () => {
    const { sticks } = track({ descriptor: WITH_NULL }, [report(0, [8, 8]), report(1, [8, 0]), report(2, [7, 7])]);
    expect([...(sticks.left?.t ?? [])]).toEqual([0, 2]);
  });

  it('counts reports that are too short and says why the first could not be read', () => {
    const built = track({ descriptor: FOUR_AXES }, [report(0, [1, 2]), report(1, [1, 2, 3, 4, 0]), report(2, [])]);
    expect(built.unread).toMatchObject({ reports: 2, first: { code: 'report-too-short' } });
    expect([...(built.sticks.left?.t ?? [])]).toEqual([1]);
    const alone = track({ descriptor: FOUR_AXES }, [report(0, [1, 2])]);
    expect(gatherEvidence(alone, 'left').lacks?.[0]?.says).toMatch(/^No report of the left stick can be read: /);
  });

  it('has a track without readings for a log that is empty after its header', () => {
    const built = track({ descriptor: FOUR_AXES });
    expect(built.sticks.left?.t).toHaveLength(0);
    expect(gatherEvidence(built, 'left').lacks?.map(({ code }) => code)).toEqual(['log-without-reports']);
  });

  it('decodes by the profile that the header names', () => {
    const built = track({ profile: 'demo-sensor-counts', domain: 'sensor' }, [
      report(0, [0x34, 0x12, 0x56, 0, 0, 0, 0, 0, 8, 0, 0], 1),
    ]);
    expect(built.layout.domain).toBe('sensor');
    expect([built.sticks.left?.x[0], built.sticks.left?.y[0]]).toEqual([0x234, 0x561]);
  });

  it('refuses a profile that it does not know and a descriptor that it cannot read, by name', () => {
    expect(build({ profile: 'tomorrow' })).toMatchObject({ ok: false, problem: { code: 'profile-unknown', at: 1 } });
    const bad = build({ descriptor: '05zz' });
    expect(bad.ok ? '' : bad.problem.says).toMatch(/^The report descriptor in the log's header cannot be read: /);
    expect(build({ descriptor: '0501090' })).toMatchObject({ ok: false });
    expect(build({ descriptor: 'c0' })).toMatchObject({ ok: false });
  });

  it('has no sticks where the log has neither descriptor nor profile', () => {
    const built = track({ descriptor: null }, [report(0, [1, 2, 3, 4])]);
    expect(built.sticks).toEqual({});
    expect(built.layout.noSticks).toMatch(/no report descriptor/);
  });

  it('fails without a header', () => {
    expect(new TrackBuilder().finish()).toMatchObject({ ok: false, problem: { code: 'log-empty' } });
  });
});
