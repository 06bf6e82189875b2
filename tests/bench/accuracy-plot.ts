/** The plot of docs/accuracy.svg: 95 % error by reference kind, engine and two-point scale, on a logarithmic axis. */
import { REFERENCES } from './accuracy-cells.ts';
import type { Row } from './accuracy-summary.ts';
import { ASKED } from './accuracy-tables.ts';

const LOW_MM = 0.3;
const HIGH_MM = 60;
const TICKS_MM = [0.5, 1, 2, 5, 10, 20, 50];
const LEFT = 112;
const PANEL = 340;
const GAP = 36;
const TOP = 74;
const PITCH = 24;
const BOTTOM = TOP + PITCH * REFERENCES.length;
const WIDTH = LEFT + 2 * PANEL + GAP + 16;
const HEIGHT = BOTTOM + 76;

export function plotOf(rows: readonly Row[]): string {
  const panels = ASKED.map((asked, i) => panel(rows, asked, LEFT + i * (PANEL + GAP)));
  const names = REFERENCES.map(
    (reference, i) => `<text x="${LEFT - 10}" y="${yOf(i) + 4}" text-anchor="end">${reference}</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-labelledby="t d">
<title id="t">Stroke error of 95 % of simulated cases, by reference</title>
<desc id="d">Hand-held pictures. The figures are those of the tables in accuracy.md.</desc>
<style>${STYLE}</style>
<rect class="paper" width="${WIDTH}" height="${HEIGHT}"/>
<text class="title" x="16" y="24">Stroke error not exceeded in 95 % of cases, two hand-held pictures</text>
${[...names, ...panels, key()].join('\n')}
</svg>
`;
}

const STYLE = `
svg { --paper: #fbfaf6; --ink: #24282b; --thin: #b9b8b0; --look: #a8480f; font: 12px "Barlow Semi Condensed", "Helvetica Neue", Arial, sans-serif; }
@media (prefers-color-scheme: dark) { svg { --paper: #1d2022; --ink: #e6e3da; --thin: #53575a; --look: #f0935a; } }
.paper { fill: var(--paper); }
text { fill: var(--ink); }
.title { font-size: 15px; }
.grid { stroke: var(--thin); stroke-width: .6; }
.row { stroke: var(--thin); stroke-width: .6; stroke-dasharray: 1 4; }
.frame { fill: none; stroke: var(--ink); stroke-width: 1; }
.asked { stroke: var(--look); stroke-width: 1.6; stroke-dasharray: 10 3 2 3; }
.asked-text { fill: var(--look); }
.careful { fill: var(--ink); stroke: var(--ink); stroke-width: 1.4; }
.plain { fill: var(--paper); stroke: var(--ink); stroke-width: 1.4; }
.two-point { fill: none; stroke: var(--ink); stroke-width: 1.4; }
`;

function panel(rows: readonly Row[], asked: (typeof ASKED)[number], left: number): string {
  const x = (errorMm: number) => xOf(errorMm, left).toFixed(1);
  const ticks = TICKS_MM.map(
    (tick) =>
      `<line class="grid" x1="${x(tick)}" y1="${TOP}" x2="${x(tick)}" y2="${BOTTOM}"/><text x="${x(tick)}" y="${BOTTOM + 16}" text-anchor="middle">${tick}</text>`,
  );
  const lines = REFERENCES.map(
    (_r, i) => `<line class="row" x1="${left}" y1="${yOf(i)}" x2="${left + PANEL}" y2="${yOf(i)}"/>`,
  );
  const shapes = REFERENCES.flatMap((reference, i) =>
    rows
      .filter((r) => r.reference === reference && r.sigmaPx === asked.sigmaPx && !r.cameraStill)
      .flatMap((row) => {
        if (row.way === 'calibrated') return [];
        const at = { x: Number(x(row.error95Mm)), y: yOf(i) };
        const twoPoint = { x: Number(x(row.twoPoint95Mm)), y: yOf(i) };
        return row.way === 'careful'
          ? [crossShape(twoPoint), circle(at, 'careful')]
          : [plusShape(twoPoint), circle(at, 'plain')];
      }),
  );
  return [
    `<text x="${left}" y="${TOP - 24}">Marks of ${asked.sigmaPx} px</text>`,
    ...ticks,
    ...lines,
    `<line class="asked" x1="${x(asked.errorMm)}" y1="${TOP - 6}" x2="${x(asked.errorMm)}" y2="${BOTTOM}"/>`,
    `<text class="asked-text" x="${x(asked.errorMm)}" y="${TOP - 10}" text-anchor="middle">${asked.inches}</text>`,
    ...shapes,
    `<rect class="frame" x="${left}" y="${TOP}" width="${PANEL}" height="${BOTTOM - TOP}"/>`,
    `<text x="${left + PANEL / 2}" y="${BOTTOM + 34}" text-anchor="middle">mm</text>`,
  ].join('\n');
}

function key(): string {
  const y = HEIGHT - 18;
  const entries = [
    { shape: circle({ x: LEFT + 6, y }, 'careful'), words: 'adjustment, careful', at: LEFT },
    { shape: circle({ x: LEFT + 156, y }, 'plain'), words: 'adjustment, plain', at: LEFT + 150 },
    { shape: crossShape({ x: LEFT + 296, y }), words: 'two-point scale, careful', at: LEFT + 290 },
    { shape: plusShape({ x: LEFT + 466, y }), words: 'two-point scale, plain', at: LEFT + 460 },
  ];
  return entries
    .map(({ shape, words, at }) => `${shape}<text x="${at + 18}" y="${y + 4}">${words}</text>`)
    .join('\n');
}

type Place = { readonly x: number; readonly y: number };

function circle({ x, y }: Place, kind: string): string {
  return `<circle class="${kind}" cx="${x}" cy="${y}" r="4.5"/>`;
}

function crossShape({ x, y }: Place): string {
  return `<path class="two-point" d="M${x - 4} ${y - 4}l8 8m0 -8l-8 8"/>`;
}

function plusShape({ x, y }: Place): string {
  return `<path class="two-point" d="M${x - 5} ${y}h10m-5 -5v10"/>`;
}

function xOf(errorMm: number, left: number): number {
  const share = Math.log(errorMm / LOW_MM) / Math.log(HIGH_MM / LOW_MM);
  return left + PANEL * Math.min(1, Math.max(0, share));
}

function yOf(index: number): number {
  return TOP + PITCH * (index + 0.5);
}
