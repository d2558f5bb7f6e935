/** The limits that a command judges by: those in force on this bench, as the app has them, and what `--limits` gives. */
import { parseLimitsFile } from '../../../core/findings/limits-file.ts';
import { limitIds, type LimitId, type Limits } from '../../../core/findings/limits.ts';
import { row, type TableSection } from '../../../core/measure/table.ts';
import { done, type Result } from '../../../core/result.ts';
import { limitsInForce, unusedLimits } from '../../bench/measure/limits-in-force.ts';
import { findPlaces } from '../../store/places.ts';
import { lookAtSettings } from '../../store/settings.ts';
import { readJson } from './input-files.ts';
import type { Terminal } from './terminal.ts';

/** Settings that cannot be used are told, and judge nothing; a file that cannot be used is refused. */
export async function readLimits(terminal: Terminal, file: string | undefined): Promise<Result<Limits>> {
  const json = file === undefined ? done({ limits: {} }) : await readJson(file);
  const given = json.ok ? parseLimitsFile(json.value) : json;
  if (!given.ok) return given;
  const { settings, problem } = lookAtSettings(findPlaces().settings);
  if (problem !== null) terminal.say(`${problem.says} The program's own limits hold.`);
  for (const says of unusedLimits(settings.limits)) terminal.say(says);
  return done(limitsInForce(settings.limits, given.value));
}

/** Those among `ids` that are not the program's own; no section where all are. */
export function limitsSections(limits: Limits, ids: readonly LimitId[] = limitIds): TableSection[] {
  const rows = ids.flatMap((id) => {
    const { value, unit, setBy } = limits[id];
    return setBy === 'default'
      ? []
      : [row(id, String(value), `${unit}, from the ${setBy === 'file' ? 'limits file' : setBy}`)];
  });
  return rows.length === 0 ? [] : [{ title: "limits that are not the program's own", rows }];
}
