/** What a rest is measured under, and what the hand has to arrange for it. */
import type { StickId } from '../../pad/stick.ts';

export const disturbances = ['rumble', 'other-stick', 'click', 'charger', 'shell'] as const;
export type Disturbance = (typeof disturbances)[number];

/** Short, e.g. for a list. */
export const disturbanceWords: Readonly<Record<Disturbance, string>> = {
  rumble: 'rest while it rumbles',
  'other-stick': 'rest, other stick at full tilt',
  click: 'rest with the click held',
  charger: 'rest with the charger in',
  shell: 'rest with the shell the other way',
};

/** What is to be done before the capture begins and kept up until it ends, as one sentence. */
export function arrangeWords(of: Disturbance, stick: StickId): string {
  const other = stick === 'left' ? 'right' : 'left';
  switch (of) {
    case 'rumble':
      return 'Start the rumble, from a game or the system, and keep it on.';
    case 'other-stick':
      return `Hold the ${other} stick at full tilt all the while.`;
    case 'click':
      return `Press the ${stick} stick straight down when asked, without pushing it aside.`;
    case 'charger':
      return 'Plug the charger in, or pull it out if it was in before.';
    case 'shell':
      return 'Open the shell if it was screwed shut before, else screw it shut.';
  }
}
