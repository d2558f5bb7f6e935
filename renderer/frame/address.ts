/** The selection as an address (the part after #), so that a view can be reopened; and back. */
import { nearestDirection } from '../../core/geometry/directions.ts';
import type { StickId } from '../../core/pad/stick.ts';

export const VIEWS = ['pad', 'survey', 'findings', 'workbench', 'memory'] as const;
export type ViewName = (typeof VIEWS)[number];

/** Screens of their own inside a view. */
const DETAILS = [
  { view: 'pad', detail: 'fitting' },
  { view: 'survey', detail: 'inputs' },
  { view: 'workbench', detail: 'chain' },
  { view: 'workbench', detail: 'consumers' },
  { view: 'workbench', detail: 'hosts' },
  { view: 'memory', detail: 'find' },
  { view: 'memory', detail: 'kept' },
] as const;

/** What is selected, whatever the view. */
export interface Selected {
  readonly view: ViewName;
  /** A screen of its own inside the view, or null. */
  readonly detail: (typeof DETAILS)[number]['detail'] | null;
  readonly stick: StickId;
  /** Degrees counter-clockwise from +x, the middle of a direction, or null. */
  readonly direction: number | null;
  /** Handle of a survey, or null. */
  readonly survey: string | null;
  /** Handle of the survey that it is compared with, or null. */
  readonly against: string | null;
  /** Key of a finding of the stick, whose evidence is marked; or null. */
  readonly finding: string | null;
  /** SHA-256 of the memory image that is shown, or null. */
  readonly image: string | null;
  /** Place of a stage in the chain, from 0, or null. */
  readonly stage: number | null;
  /** Microseconds of the survey's log at which the selected sample stands, or null. */
  readonly sample: number | null;
}

export const NOTHING_SELECTED: Selected = {
  view: 'pad',
  detail: null,
  stick: 'left',
  direction: null,
  survey: null,
  against: null,
  finding: null,
  image: null,
  stage: null,
  sample: null,
};

/** An id, and a number where the stick has more findings of it. */
const FINDING_KEY = /^[a-z][a-z-]{0,39}(?:\.\d{1,3})?$/u;

const IMAGE = /^[0-9a-f]{64}$/u;

/** The nearest direction to an angle in degrees; null stays null, and so does what is no number. */
export function toDirection(angle: number | null): number | null {
  return angle === null || !Number.isFinite(angle) ? null : nearestDirection(angle);
}

/** E.g. `#/workbench?stick=left&direction=55&survey=s3`. */
export function formatAddress(selected: Selected): string {
  const query = new URLSearchParams({ stick: selected.stick });
  if (selected.direction !== null) query.set('direction', String(selected.direction));
  if (selected.survey !== null) query.set('survey', selected.survey);
  if (selected.against !== null) query.set('against', selected.against);
  if (selected.finding !== null) query.set('finding', selected.finding);
  if (selected.image !== null) query.set('image', selected.image);
  if (selected.stage !== null) query.set('stage', String(selected.stage));
  if (selected.sample !== null) query.set('sample', String(selected.sample));
  const path = selected.detail === null ? selected.view : `${selected.view}/${selected.detail}`;
  return `#/${path}?${query.toString()}`;
}

/** Reads an address; what is missing or unknown in it is left as nothing selected. Null for an address of another kind. */
export function parseAddress(hash: string): Selected | null {
  if (!hash.startsWith('#/')) return null;
  const [path = '', queryText = ''] = hash.slice(2).split('?', 2);
  const [viewName, detail] = path.split('/');
  const query = new URLSearchParams(queryText);
  const direction = query.get('direction');
  const image = query.get('image');
  const stage = query.get('stage');
  const finding = query.get('finding');
  const sample = query.get('sample');
  return {
    view: VIEWS.find((view) => view === viewName) ?? NOTHING_SELECTED.view,
    detail: DETAILS.find((one) => one.view === viewName && one.detail === detail)?.detail ?? null,
    stick: query.get('stick') === 'right' ? 'right' : 'left',
    direction: direction === null || direction === '' ? null : toDirection(Number(direction)),
    survey: toHandle(query.get('survey')),
    against: toHandle(query.get('against')),
    finding: finding !== null && FINDING_KEY.test(finding) ? finding : null,
    image: image !== null && IMAGE.test(image) ? image : null,
    stage: stage !== null && /^\d{1,2}$/u.test(stage) ? Number(stage) : null,
    sample: sample !== null && /^\d{1,13}$/u.test(sample) ? Number(sample) : null,
  };
}

function toHandle(text: string | null): string | null {
  return text === null || text === '' || text.length > 64 ? null : text;
}
