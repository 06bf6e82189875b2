/**
 * Each application's stroke as a dimension in the chart.
 *
 * Model    it stands in the middle of the held part, from the released level up to it; its value stands upright where it fits between
 *          the flanks, else along the line, read from the right (both as in ISO 129-1, from memory). What has no room is left out:
 *          the list of applications says it too.
 */
import type { Application, ClipMeasurement, CurvePoint, Phase } from '../../measurement/clip-measurement.ts';
import type { Box } from '../viewer/box.ts';
import { type DimensionLines, dimensionLines } from '../viewer/dimension-lines.ts';
import type { ScreenPoint } from '../viewer/view-transform.ts';
import type { CurveScale } from './curve-scale.ts';
import { levelMm, phaseOf, textWidthGuessCss, xOfFrame } from './phase-place.ts';

export type PlateauNote = {
  /** From 1. */
  readonly number: number;
  readonly xCss: number;
  readonly lines: DimensionLines;
  /** Empty where there is no room for it. */
  readonly text: string;
  readonly textCss: number;
  readonly upright: boolean;
  /** At the released level, from where the rod leaves it to beyond the dimension line. */
  readonly extension: { readonly fromCss: number; readonly toCss: number; readonly yCss: number };
  /** The held part with U at 95 % of the stroke. */
  readonly held: Box;
};

/** Of a value in its break: the second where the first has no room. */
const TEXT_SIZES_CSS = [17, 14] as const;
/** Arrowheads and room at both ends of the break, as dimension-lines.ts draws them. */
const ARROWS_CSS = 52;
const BEYOND_CSS = 6;
const LEAST_HELD_CSS = 6;

export function plateauNotes(
  { curve, applications }: ClipMeasurement,
  scale: CurveScale,
  textOf: (application: Application) => string,
): PlateauNote[] {
  return applications.flatMap((application, index) => {
    const held = phaseOf(application, 'held');
    const released = phaseOf(application, 'released');
    if (!held || !released) return [];
    const [fromCss, toCss] = [xOfFrame(curve, scale, held.from), xOfFrame(curve, scale, held.to)];
    const zeroMm = levelMm(curve, released);
    const { U95 } = application.strokeMm;
    const heldMm = zeroMm + application.strokeMm.value;
    const [lowY, highY] = [scale.yAt(zeroMm), scale.yAt(heldMm)];
    const xCss = (fromCss + toCss) / 2;
    const value = textOf(application);
    const { textCss, upright, size, fits } = textPlace(value, {
      widthCss: flankRoomCss(curve, scale, application),
      heightCss: lowY - highY,
    });
    const ends = [
      { xCss, yCss: lowY },
      { xCss, yCss: highY },
    ] as const;
    const screen = { widthCss: scale.widthCss, heightCss: scale.heightCss };
    return [
      {
        number: index + 1,
        xCss,
        lines: dimensionLines(ends, size, screen),
        text: fits ? value : '',
        textCss,
        upright,
        extension: extensionOf(released, held, { xCss, yCss: lowY }, (frame) =>
          xOfFrame(curve, scale, frame),
        ),
        held: {
          leftCss: fromCss,
          topCss: scale.yAt(heldMm + U95),
          widthCss: Math.max(LEAST_HELD_CSS, toCss - fromCss),
          heightCss: scale.yAt(heldMm - U95) - scale.yAt(heldMm + U95),
        },
      },
    ];
  });
}

/** The released level lies before the held part, or after it where the clip begins with the brake applied. */
function extensionOf(
  released: Phase,
  held: Phase,
  { xCss, yCss }: ScreenPoint,
  xOf: (frame: number) => number,
): PlateauNote['extension'] {
  return released.to <= held.from
    ? { fromCss: xOf(released.to), toCss: xCss + BEYOND_CSS, yCss }
    : { fromCss: xOf(released.from), toCss: xCss - BEYOND_CSS, yCss };
}

type TextPlace = {
  readonly textCss: number;
  readonly upright: boolean;
  readonly size: { readonly widthCss: number; readonly heightCss: number };
  readonly fits: boolean;
};

function textPlace(text: string, room: { readonly widthCss: number; readonly heightCss: number }): TextPlace {
  const [large, small] = TEXT_SIZES_CSS;
  const widthCss = textWidthGuessCss(text, large);
  if (widthCss + 2 * BEYOND_CSS < room.widthCss)
    return { textCss: large, upright: true, size: { widthCss, heightCss: large + 3 }, fits: true };
  const along = (textCss: number) => textWidthGuessCss(text, textCss) + ARROWS_CSS < room.heightCss;
  const textCss = along(large) ? large : small;
  const fits = along(textCss);
  const lengthCss = fits ? textWidthGuessCss(text, textCss) : 0;
  return { textCss, upright: false, size: { widthCss: textCss + 3, heightCss: lengthCss }, fits };
}

/** Between the flanks at half their height. */
function flankRoomCss(curve: readonly CurvePoint[], scale: CurveScale, application: Application): number {
  const middle = (kind: Phase['kind'], otherwise: 'from' | 'to') => {
    const phase = phaseOf(application, kind);
    if (phase) return xOfFrame(curve, scale, Math.round((phase.from + phase.to) / 2));
    return xOfFrame(curve, scale, phaseOf(application, 'held')?.[otherwise] ?? 0);
  };
  return middle('releasing', 'to') - middle('applying', 'from');
}
