/**
 * What to follow of a wrench marked on one frame of a clip, the brake released there.
 *
 * Model    hex and camshaft end are where they are whenever the brake is released: carried by what stands still; the pin roams, the
 *          wrench's end swings about the hex. Nothing stands still in a strip about the arm, in the disc that the pin may reach and
 *          in the sector that the wrench may sweep.
 *          Radii by the arm's length in the picture: an arm is 127 to 165 mm long (common practice, no source), a wrench's end and
 *          a pin's with its washer are 20 mm across and more.
 */
import type { PlacedPoint } from '../../marks/placement.ts';
import type { WrenchTurn } from '../../record/wheel-end.ts';
import type { FollowedThing, FollowQuestion } from '../../vision/follow-sight.ts';

type Place = readonly [x: number, y: number];
/** In the order of the question. */
export const FOLLOWED = ['centre', 'camshaft', 'pin', 'tip'] as const;
export type MarkedWrench = Readonly<Record<(typeof FOLLOWED)[number], PlacedPoint>>;

const USUAL_ARM_MM = 146;
const RADIUS_MM = 12;
const RADIUS_PX = { least: 8, most: 60 };
/** Over the arm's length. */
const ROAMS = 0.6;
const ARM_HALF = 0.3;
/** Over the wrench's. */
const SWEPT = 1.15;
const SWEPT_RAD = (75 * Math.PI) / 180;
const CORNERS = 12;

export function markedWrench({ centre, camshaft, pin, tip }: WrenchTurn): MarkedWrench | null {
  return centre && camshaft && pin && tip ? { centre, camshaft, pin, tip } : null;
}

export function wrenchQuestion({ centre, camshaft, pin, tip }: MarkedWrench): FollowQuestion {
  const armPx = Math.hypot(pin.xPx - camshaft.xPx, pin.yPx - camshaft.yPx);
  const radiusPx = Math.min(RADIUS_PX.most, Math.max(RADIUS_PX.least, (RADIUS_MM * armPx) / USUAL_ARM_MM));
  const base = (name: string, at: PlacedPoint) => ({ name, placePx: placeOf(at), radiusPx });
  const things: readonly FollowedThing[] = [
    { ...base('centre', centre), how: 'carried' },
    { ...base('camshaft', camshaft), how: 'carried' },
    { ...base('pin', pin), how: 'roams', reachPx: ROAMS * armPx },
    { ...base('tip', tip), how: 'swings', aboutPx: placeOf(centre) },
  ];
  return {
    things,
    tape: [],
    aboutPx: placeOf(centre),
    leaveOut: [
      arc(placeOf(pin), ROAMS * armPx, 0, Math.PI),
      strip(placeOf(camshaft), placeOf(pin), ARM_HALF * armPx),
      sweptSector(placeOf(centre), placeOf(tip)),
    ],
    reachPx: { out: [0, 0], back: [0, 0] },
  };
}

const placeOf = ({ xPx, yPx }: PlacedPoint): Place => [xPx, yPx];

function arc([x, y]: Place, radius: number, middleRad: number, halfRad: number): readonly Place[] {
  return Array.from({ length: 2 * CORNERS }, (_corner, i): Place => {
    const at = middleRad + halfRad * ((i + 0.5) / CORNERS - 1);
    return [x + radius * Math.cos(at), y + radius * Math.sin(at)];
  });
}

/** With some room behind the hex. */
function sweptSector(hex: Place, tip: Place): readonly Place[] {
  const [dx, dy] = [tip[0] - hex[0], tip[1] - hex[1]];
  const behind: Place = [hex[0] - 0.2 * dx, hex[1] - 0.2 * dy];
  return [behind, ...arc(hex, SWEPT * Math.hypot(dx, dy), Math.atan2(dy, dx), SWEPT_RAD)];
}

function strip(from: Place, to: Place, half: number): readonly Place[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.max(Math.hypot(dx, dy), 1e-9);
  const [sx, sy] = [(-half * dy) / length, (half * dx) / length];
  return [
    [from[0] + sx, from[1] + sy],
    [to[0] + sx, to[1] + sy],
    [to[0] - sx, to[1] - sy],
    [from[0] - sx, from[1] - sy],
  ];
}
