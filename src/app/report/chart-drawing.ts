/** The stroke of a followed clip over time: the chart of the screen, in ink. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { radFromDeg } from '../../basics/units.ts';
import { type Markup, markup } from '../../evidence/markup.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { bandPath, curvePath } from '../curve/curve-path.ts';
import {
  type CurveScale,
  curveScale,
  GAP_LANE_CSS,
  HANDLE_LANE_CSS,
  SQUARE_RAD,
} from '../curve/curve-scale.ts';
import { gapNotes, gapsIn } from '../curve/gap-notes.ts';
import { markedPath } from '../curve/marked-path.ts';
import { type PlateauNote, plateauNotes } from '../curve/plateau-notes.ts';
import { type PointNote, pointNotes } from '../curve/point-notes.ts';
import { arrowsPath, linesPath } from '../viewer/line-path.ts';
import type { ScreenPoint } from '../viewer/view-transform.ts';
import { CURVE, openText, tickLengthText, tickSecondsText } from '../words/curve.ts';
import { FINDING } from '../words/findings.ts';
import { lengthText, measuredLengthText } from '../words/values.ts';

const WIDTH = 700;
const INK = '#16191b';
const INK_2 = '#4a5056';
const RULE = '#8a8f92';

export function chartDrawing(
  measurement: ClipMeasurement,
  { limitMm, unit, id }: { readonly limitMm: number | null; readonly unit: LengthUnit; readonly id: string },
): Markup {
  const scale = curveScale(measurement, { widthCss: WIDTH, limitMm, unit });
  const { leftCss, rightCss, baseCss, xAt, yAt } = scale;
  const frames = measurement.curve.map(({ timeS, stroke }) => ({ timeS, seen: stroke }));
  const plateaus = plateauNotes(measurement, scale, ({ strokeMm }) => measuredLengthText(strokeMm, unit));
  const hatch = `url(#${id})`;
  return markup`<svg class="chart" viewBox="0 0 ${WIDTH} ${scale.heightCss - HANDLE_LANE_CSS}" role="img" aria-label="${CURVE.name}" fill="none" stroke-linejoin="round" font-size="14">
<defs><pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="5" stroke="${INK}" stroke-width="2.2"/></pattern></defs>
${axes(scale, unit)}
<path stroke="${RULE}" stroke-width="0.7" d="M${leftCss} ${baseCss - GAP_LANE_CSS}H${rightCss}"/>
${limitMm === null ? null : markup`<path stroke="${INK}" stroke-width="3" d="M${leftCss} ${yAt(limitMm)}H${rightCss}"/>`}
${plateaus.map((note) => plateau(note, plateaus.length > 1, hatch))}
<path fill="${hatch}" d="${bandPath(frames, { xAt, yAt })}"/>
<path stroke="${INK}" stroke-width="1.75" d="${curvePath(frames, { xAt, yAt })}"/>
${pointNotes(measurement, scale).map(point)}
${gaps(measurement, scale, 'stroke', baseCss)}
<path fill="${INK}" d="${markedPath(measurement, scale)}"/>
${limitMm === null ? null : label(`${FINDING.limit} ${lengthText(limitMm, unit)}`, { xCss: leftCss + 6, yCss: yAt(limitMm) - 6 })}
${angleStrip(measurement, scale)}
</svg>`;
}

function axes(
  { leftCss, rightCss, topCss, baseCss, yAt, xAt, strokeTicks, timeTicks, angle }: CurveScale,
  unit: LengthUnit,
): Markup {
  const tickBase = angle?.baseCss ?? baseCss;
  const ticks = strokeTicks.map(
    ({ atMm, long }) => `M${leftCss - (long ? 8 : 4)} ${yAt(atMm)}h${long ? 8 : 4}`,
  );
  const times = timeTicks.map((timeS) => `M${xAt(timeS)} ${baseCss}v6M${xAt(timeS)} ${tickBase}v6`);
  return markup`<path stroke="${RULE}" d="M${leftCss} ${topCss}V${baseCss}H${rightCss}${ticks.join('')}${times.join('')}"/>
${strokeTicks
  .filter(({ long }) => long)
  .map(({ atMm }) => small(tickLengthText(atMm, unit), leftCss - 11, yAt(atMm) + 5, 'end'))}
${small(unit === 'mm' ? 'mm' : 'in', leftCss - 11, topCss - 4, 'end')}
${timeTicks.map((timeS) => small(tickSecondsText(timeS), xAt(timeS), tickBase + 20, 'middle'))}
${small('s', rightCss + 10, tickBase + 20, 'end')}`;
}

function plateau(
  { lines, extension, held, xCss, text, textCss, upright, number }: PlateauNote,
  numbered: boolean,
  hatch: string,
): Markup {
  const x = lines.value.leftCss + lines.value.widthCss / 2;
  const y = lines.value.topCss + lines.value.heightCss / 2;
  const turn = upright ? '' : 'rotate(-90)';
  return markup`<rect x="${held.leftCss}" y="${held.topCss}" width="${held.widthCss}" height="${held.heightCss}" fill="${hatch}" stroke="${INK}"/>
<path stroke="${INK}" d="M${extension.fromCss} ${extension.yCss}H${extension.toCss}${linesPath(lines.shafts)}"/>
<path fill="${INK}" d="${arrowsPath(lines.arrows)}"/>
<text ${HALO} font-weight="600" font-size="${textCss}" text-anchor="middle" dy="0.36em" transform="translate(${x} ${y})${turn}">${text}</text>
${numbered ? markup`<circle cx="${xCss}" cy="16" r="12" stroke="${INK}"/>${small(String(number), xCss, 21, 'middle')}` : null}`;
}

function point({ xCss, yCss, wordCss, kind }: PointNote): Markup {
  const word = kind === 'ninety' ? CURVE.ninety : CURVE.square;
  return markup`<path stroke="#fff" stroke-width="4" d="M${xCss - 7} ${yCss}h14"/><path stroke="${INK}" d="M${xCss - 7} ${yCss}h14"/>${wordCss === null ? null : markup`<text ${HALO} x="${xCss - 11}" y="${wordCss + 5}" text-anchor="end">${word}</text>`}`;
}

function gaps(
  measurement: ClipMeasurement,
  scale: CurveScale,
  of: 'stroke' | 'angle',
  baseCss: number,
): Markup {
  const drawn = gapNotes(measurement, gapsIn(measurement, of), scale, openText);
  return markup`${drawn.map(({ fromCss, toCss, narrow, word, wordCss }) => {
    const ticks = narrow
      ? `M${(fromCss + toCss) / 2} ${baseCss - 9}v9`
      : `M${fromCss} ${baseCss - 9}v9M${toCss} ${baseCss - 9}v9`;
    return markup`<path stroke="${INK}" d="${ticks}"/>${narrow ? null : markup`<path stroke="${INK}" stroke-dasharray="2 3" d="M${fromCss} ${baseCss - 4}H${toCss}"/>`}${wordCss === null ? null : small(word, wordCss, baseCss - 12, 'middle')}`;
  })}`;
}

function angleStrip(measurement: ClipMeasurement, scale: CurveScale): Markup | null {
  const { leftCss, rightCss, xAt, angle } = scale;
  if (!angle) return null;
  const { topCss, baseCss, yAt, ticksDeg } = angle;
  const frames = measurement.curve.map(({ timeS, armAngleRad }) => ({ timeS, seen: armAngleRad }));
  const ticks = ticksDeg.map((deg) => `M${leftCss - 8} ${yAt(radFromDeg(deg))}h8`).join('');
  return markup`${small(CURVE.angle, leftCss, topCss - 8, 'start')}
<path stroke="${RULE}" d="M${leftCss} ${topCss}V${baseCss}H${rightCss}${ticks}"/>
${ticksDeg.map((deg) => small(`${deg}°`, leftCss - 11, yAt(radFromDeg(deg)) + 5, 'end'))}
<path stroke="${INK_2}" stroke-dasharray="14 3 3 3" d="M${leftCss} ${yAt(SQUARE_RAD)}H${rightCss}"/>
<path stroke="${INK}" stroke-width="1.25" d="${curvePath(frames, { xAt, yAt })}"/>
${gaps(measurement, scale, 'angle', baseCss)}`;
}

const HALO = markup`stroke="#fff" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`;

function label(text: string, { xCss, yCss }: ScreenPoint): Markup {
  return markup`<text ${HALO} font-weight="600" x="${xCss}" y="${yCss}">${text}</text>`;
}

function small(text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): Markup {
  return markup`<text x="${x}" y="${y}" text-anchor="${anchor}">${text}</text>`;
}
