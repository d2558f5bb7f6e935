/** The figure on the screen as a file of its own: the same geometry, with the ink that the style sheet gave it. */

/** What a style sheet may give a mark, as SVG attributes. */
const INK = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-opacity',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'paint-order',
  'shape-rendering',
] as const;

const SVG = 'http://www.w3.org/2000/svg';
/** A picture is drawn twice as fine as the screen, so that it can be printed. */
const FINER = 2;

export interface FigureFile {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

/** Null where nothing is drawn. `title` names it; `ground` is the colour of the paper. */
export function figureFile(box: Element, title: string, ground: string): FigureFile | null {
  const drawn = box.querySelector('svg');
  const canvas = box.querySelector('canvas');
  const from = drawn ?? canvas;
  if (from === null) return null;
  const { width, height } = from.getBoundingClientRect();
  if (!(width > 0 && height > 0)) return null;
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('xmlns', SVG);
  svg.setAttribute('width', String(Math.round(width)));
  svg.setAttribute('height', String(Math.round(height)));
  svg.setAttribute('viewBox', drawn?.getAttribute('viewBox') ?? `0 0 ${Math.round(width)} ${Math.round(height)}`);
  svg.append(element('title', {}, title), element('rect', { width: '100%', height: '100%', fill: ground }));
  if (drawn !== null) for (const child of drawn.children) svg.append(inked(child));
  else if (canvas !== null)
    svg.append(element('image', { href: canvas.toDataURL(), width: String(width), height: String(height) }));
  return { text: new XMLSerializer().serializeToString(svg), width, height };
}

/** The same as a picture of points; null where the system draws none. */
export async function figurePicture({ text, width, height }: FigureFile): Promise<Blob | null> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  try {
    await image.decode();
  } catch {
    return null;
  }
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * FINER);
  canvas.height = Math.round(height * FINER);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}

function inked(from: Element): Element {
  const copy = from.cloneNode(false) as Element;
  const style = getComputedStyle(from);
  for (const name of INK) {
    const value = style.getPropertyValue(name);
    if (value !== '' && value !== 'normal') copy.setAttribute(name, value);
  }
  copy.removeAttribute('class');
  copy.removeAttribute('style');
  for (const child of from.childNodes) copy.append(child instanceof Element ? inked(child) : child.cloneNode(false));
  return copy;
}

function element(name: string, attributes: Readonly<Record<string, string>>, text = ''): Element {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.textContent = text;
  return made;
}
