/** A capture under a disturbance: the rest of a stick while something else goes on at the pad. */
import type { Disturbance } from '../../../../core/capture/evidence/disturbance.ts';
import { middleOf, tiltBetween } from '../../../../core/capture/evidence/main-rest.ts';
import type { GuideOptions } from '../../../../core/capture/guide/capture-guide.ts';
import { DisturbanceGuide, type Beside } from '../../../../core/capture/guide/disturbance-guide.ts';
import type { PadLayout } from '../../../../core/pad/layout.ts';
import type { StickId } from '../../../../core/pad/stick.ts';
import { emptyView } from '../survey-view.ts';
import { DISTURBED_DWELLS, type Asked } from '../survey-words.ts';
import type { CaptureRun, LiveReading, SurveyState } from './capture-run.ts';
import { guidedCapture, pushedToward, wishToward } from './guided-capture.ts';

export function disturbanceCapture(
  of: Disturbance,
  options: GuideOptions,
  layout: PadLayout,
  asked: Asked,
  rests: SurveyState['rests'],
): CaptureRun {
  const guide = new DisturbanceGuide({ ...options, of, dwells: DISTURBED_DWELLS });
  return guidedCapture(guide, () => emptyView(asked, rests), {
    reading: (t, reading) => guide.reading(t, reading, besideOf(options.stick, layout, reading)),
    view: () => ({
      phase: guide.phase,
      toward: pushedToward(guide),
      releases: { taken: guide.taken, asked: guide.asked },
    }),
    wish: () => {
      if (of === 'click')
        return guide.phase === 'waiting' ? { does: 'holdClick', button: layout.clicks[options.stick] ?? 1 } : null;
      const wish = wishToward('pushAndLetGo', guide);
      return wish && { ...wish, during: of };
    },
  });
}

/** What the rest of the pad does while the stick is watched. */
function besideOf(stick: StickId, layout: PadLayout, { buttonDown, slot }: LiveReading): Beside {
  const click = layout.clicks[stick];
  const bit = (click ?? 1) - 1;
  const isDown = (((slot.buttons[bit >>> 5] ?? 0) >>> (bit & 31)) & 1) === 1;
  return {
    buttonDown,
    clickDown: click === undefined ? buttonDown : isDown,
    otherTilt: otherTilt(stick === 'left' ? 'right' : 'left', layout, slot.axes),
  };
}

function otherTilt(other: StickId, layout: PadLayout, axes: Float64Array): number | null {
  const fields = layout.sticks[other];
  // Where the stick's axes stand in a reading.
  const at = other === 'right' ? 2 : 0;
  const [x = Number.NaN, y = Number.NaN] = [axes[at], axes[at + 1]];
  if (fields === undefined || Number.isNaN(x) || Number.isNaN(y)) return null;
  return tiltBetween(fields, middleOf(fields), { x, y });
}
