/** A mapping as a file that the browser saves: the proposed one under the survey's name, yours under its own. */
import { formatMappingFile } from '../../core/mapping/mapping-file.ts';
import type { PadMapping } from '../../core/mapping/mapping.ts';
import type { SurveyDetails } from '../stick/opened-survey.svelte.ts';

export interface Download {
  readonly name: string;
  readonly text: string;
}

/** `called` is the name of yours; without one the file is called after the survey. */
export function mappingDownload(details: SurveyDetails, sticks: PadMapping, called: string | null = null): Download {
  const text = formatMappingFile({
    pad: details.pad,
    domain: details.log.domain,
    ...(called !== null && { name: called }),
    sticks,
  });
  return { name: `${fileStem(called ?? details.name)}-mapping.json`, text };
}

/** A name that every file system takes. */
function fileStem(name: string): string {
  const stem = name
    .replace(/\.[a-z]+$/i, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return stem === '' ? 'survey' : stem;
}
