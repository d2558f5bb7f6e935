/** How much larger than at the desk everything is drawn: pictures laid out in pixels grow with the text of the theme. */

const DESK_TEXT_PIXELS = 13;

/** What the scale needs of the window. */
export interface ScalePlace {
  /** The theme's text size now, e.g. "14.5px". */
  textSize(): string;
  addEventListener(event: 'resize', hear: () => void): void;
}

export class ScreenScale {
  /** 1 at the desk. */
  now = $state(1);

  follow(place: ScalePlace): void {
    const read = (): void => {
      const pixels = Number.parseFloat(place.textSize());
      this.now = pixels > 0 ? pixels / DESK_TEXT_PIXELS : 1;
    };
    read();
    place.addEventListener('resize', read);
  }
}

export const screenScale = new ScreenScale();
