/** The stroke against its limit, as on the sheet: clear of the line, across it, or touching it. In tenths of a millimetre of paper. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { type Markup, markup } from '../../evidence/markup.ts';
import { guardMmOf } from '../../finding/guard-band.ts';
import type { WithU } from '../../measurement/measured.ts';
import { barScale } from '../sheet/bar-scale.ts';
import { tickLengthText } from '../words/curve.ts';
import { FINDING } from '../words/findings.ts';
import { lengthText } from '../words/values.ts';

export type BarLine = WithU & { readonly name: string };

const WIDTH = 1300;
const NAMES = 230;
const TOP = 46;
const ROW = 44;
const GAP = 12;
const HATCH = 13;

/** As found above, after the repair below it, on one scale. */
export function barDrawing(
  strokes: readonly BarLine[],
  limitsMm: readonly number[],
  unit: LengthUnit,
  label: string,
): Markup {
  const { endMm, ticks } = barScale(
    [...limitsMm, ...strokes.map(({ value, U95 }) => Math.max(0, value + U95))],
    unit,
  );
  const at = (mm: number) => NAMES + (Math.max(0, mm) / endMm) * (WIDTH - NAMES);
  const base = TOP + strokes.length * (ROW + GAP);
  return markup`<svg class="bar" viewBox="0 0 ${WIDTH} ${base + 60}" role="img" aria-label="${label}" fill="none" stroke="#16191b">
${strokes.map((stroke, i) => row(stroke, TOP + i * (ROW + GAP), at))}
<path stroke-width="2" d="M${NAMES} ${base}H${WIDTH}${ticks.map(({ atMm, long }) => `M${n(at(atMm))} ${base}v${long ? 16 : 8}`).join('')}"/>
<g stroke="none" font-size="28">${ticks
    .filter(({ long, atMm }) => long && at(atMm) < WIDTH - 40)
    .map(
      ({ atMm }) =>
        markup`<text x="${n(at(atMm))}" y="${base + 44}" text-anchor="${atMm === 0 ? 'start' : 'middle'}">${tickLengthText(atMm, unit)}</text>`,
    )}<text x="${WIDTH}" y="${base + 44}" text-anchor="end">${unit === 'mm' ? 'mm' : 'in'}</text></g>
${limitsMm.map(
  (mm) =>
    markup`<path stroke-width="8" d="M${n(at(mm))} ${TOP - 12}V${base}"/><text stroke="none" font-size="30" font-weight="600" x="${n(at(mm))}" y="${TOP - 20}" text-anchor="${at(mm) > WIDTH * 0.85 ? 'end' : 'middle'}">${`${FINDING.limit} ${lengthText(mm, unit)}`}</text>`,
)}</svg>`;
}

function row({ value, u, U95, name }: BarLine, y: number, at: (mm: number) => number): Markup {
  const [low, high] = [at(value - guardMmOf(u)), at(value + guardMmOf(u))];
  const middle = y + ROW / 2;
  const box = `M${n(low)} ${y}H${n(high)}V${y + ROW}H${n(low)}Z`;
  return markup`<text stroke="none" font-size="30" x="0" y="${y + 32}">${name}</text>
<path fill="#16191b" stroke="none" d="M${NAMES} ${y}H${n(low)}V${y + ROW}H${NAMES}Z"/>
<path fill="#fff" stroke-width="2" d="${box}"/><path stroke-width="3.5" d="${hatch(low, high, y)}"/>
<path stroke-width="3.5" d="M${n(at(value - U95))} ${middle}H${n(low)}M${n(high)} ${middle}H${n(at(value + U95))}"/>
<path stroke-width="5" d="M${n(at(value))} ${y - 6}V${y + ROW}"/>`;
}

/** Lines at 45 degrees between two places, cut at the edges. */
function hatch(left: number, right: number, top: number): string {
  const width = right - left;
  const count = Math.floor((width + ROW) / HATCH);
  return Array.from({ length: count }, (_, i) => {
    const along = (i + 0.5) * HATCH;
    const from = `${n(left + Math.min(along, width))} ${n(top + Math.max(0, along - width))}`;
    const to = `${n(left + Math.max(0, along - ROW))} ${n(top + Math.min(along, ROW))}`;
    return `M${from}L${to}`;
  }).join('');
}

function n(units: number): string {
  return String(Number(units.toFixed(1)));
}
