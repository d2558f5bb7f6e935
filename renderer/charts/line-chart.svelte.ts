/** A small line chart on 0 … 1 or on logarithmic axes, drawn by Chart.js in the theme's ink. */
import {
  Chart,
  LinearScale,
  LineController,
  LineElement,
  LogarithmicScale,
  PointElement,
  type ChartConfiguration,
} from 'chart.js';
import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import type { Tone } from '../../core/plot/figure.ts';
import { readInk, type Ink } from '../theme/read-ink.ts';
import { screenScale } from '../theme/screen-scale.svelte.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, LogarithmicScale);

export interface LineChartInput {
  /** Words of the two axes. */
  readonly across: string;
  readonly up: string;
  /** `share`, 0 … 1, where not given; `logarithmic` takes its limits from the points, which are above 0. */
  readonly scale?: 'share' | 'logarithmic';
  /** Drawn in order; x and y in turn, plain numbers. */
  readonly lines: readonly { readonly tone: Tone; readonly points: Float64Array }[];
}

const INK_OF: Readonly<Record<Tone, 'now' | 'accent' | 'yours' | 'before'>> = {
  now: 'now',
  proposed: 'accent',
  yours: 'yours',
  before: 'before',
};

const DASH_OF: Readonly<Record<Tone, number[]>> = { now: [5, 4], proposed: [], yours: [13, 4], before: [1, 4] };

/** Keeps a chart on a canvas for as long as the canvas stands; draws again when the input changes. */
export function lineChart(read: () => LineChartInput): Attachment<HTMLCanvasElement> {
  return (canvas) => {
    // Another theme gets another canvas. Reading styles makes the browser lay out the page: never on every change.
    const ink = readInk(canvas);
    const letter = $derived(letterOf(canvas, screenScale.now));
    const chart = untrack(() => new Chart(canvas, configuration(read(), ink, letter)));
    $effect(() => {
      const next = configuration(read(), ink, letter);
      chart.data = next.data;
      chart.options = next.options ?? {};
      chart.update('none');
    });
    return () => chart.destroy();
  };
}

/** `scale` is read so that another one measures the letters again. */
function letterOf(canvas: HTMLCanvasElement, scale: number): number {
  return scale > 0 ? Number.parseFloat(getComputedStyle(canvas).fontSize) : 0;
}

function configuration(input: LineChartInput, ink: Ink, letter: number): ChartConfiguration<'line'> {
  const font = { family: ink.sans, size: letter };
  const axis = (words: string): object => ({
    ...(input.scale === 'logarithmic' ? { type: 'logarithmic' } : { type: 'linear', min: 0, max: 1 }),
    title: { display: true, text: words, color: ink.soft, font, padding: 2 },
    ticks: {
      ...(input.scale === 'logarithmic' ? { maxTicksLimit: 4 } : { stepSize: 0.5 }),
      color: ink.soft,
      font,
      minRotation: 0,
      maxRotation: 0,
      padding: 4,
    },
    grid: { color: ink.faint, tickLength: 0 },
    border: { color: ink.rule },
  });
  return {
    type: 'line',
    data: {
      datasets: input.lines.map(({ tone, points }) => ({
        data: Array.from({ length: points.length / 2 }, (_, at) => ({
          x: points[2 * at] ?? Number.NaN,
          y: points[2 * at + 1] ?? Number.NaN,
        })),
        borderColor: ink[INK_OF[tone]],
        borderWidth: tone === 'now' ? 1.5 : 1.9,
        borderDash: DASH_OF[tone],
      })),
    },
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      maintainAspectRatio: false,
      responsive: true,
      events: [],
      elements: { point: { radius: 0 }, line: { tension: 0 } },
      scales: { x: axis(input.across), y: axis(input.up) },
    },
  };
}
