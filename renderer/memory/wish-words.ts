/** What is asked of the proposal, in the words of the Workbench. */
import { percentText } from '../../core/zones/one-zone.ts';
import type { Wish } from '../stick/over-reload.ts';

/** E.g. `full reach, steadiest centre, guard 1 %`; the guard stands only where it counts. */
export function wishWords({ aim, centreBy, guard }: Wish): string {
  const centre = `${centreBy} centre`;
  return aim === 'full-reach' ? `full reach, ${centre}, guard ${percentText(guard)} %` : `${aim}, ${centre}`;
}
