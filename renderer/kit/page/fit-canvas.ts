/** A canvas as many device pixels wide and high as it is shown, drawn on in CSS pixels. */

/** Resizes the drawing only where its place has changed, since that also clears it. Null where there is no room. */
export function fitCanvas(canvas: HTMLCanvasElement): CanvasRenderingContext2D | null {
  const ratio = window.devicePixelRatio;
  const width = Math.round(canvas.clientWidth * ratio);
  const height = Math.round(canvas.clientHeight * ratio);
  if (width === 0 || height === 0) return null;
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  const pen = canvas.getContext('2d');
  pen?.setTransform(ratio, 0, 0, ratio, 0, 0);
  return pen;
}
