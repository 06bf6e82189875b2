/** Rusty ends of pins before something plain, drawn without any code of the assists. */
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';

export type Seen = {
  readonly centre: Point;
  readonly turnRad: number;
  readonly larger: number;
  readonly rust: number;
  readonly seed: number;
};

const RADIUS_PX = 15;

/** An end of radius 15 px, of spots of fixed places. */
export function endPicture(seen: Seen, [widthPx, heightPx]: Point = [140, 120]): Gray {
  const ends = [endOf(seen)];
  return drawn(widthPx, heightPx, seen.seed, (x, y) =>
    ends.reduce((sum, end) => sum + end(x, y), 70 + 0.2 * x),
  );
}

/** Several ends, and something bright over all above a line, that stands still. */
export function endsPicture(all: readonly Seen[], [widthPx, heightPx]: Point, brightAbovePx: number): Gray {
  const ends = all.map(endOf);
  return drawn(widthPx, heightPx, all[0]?.seed ?? 1, (x, y) =>
    y < brightAbovePx ? 210 : ends.reduce((sum, end) => sum + end(x, y), 70 + 0.2 * x),
  );
}

/** What an end adds to what is behind it. */
function endOf({ centre, turnRad, larger, rust }: Seen): (x: number, y: number) => number {
  const spots = drawFrom(rust);
  const places = Array.from({ length: 40 }, () => ({
    x: spots.normal(0, 9),
    y: spots.normal(0, 9),
    r: 1.2 + 2 * spots.uniform(0, 1),
    dark: 50 * spots.uniform(-0.6, 1),
  }));
  const [c, s] = [Math.cos(turnRad) / larger, Math.sin(turnRad) / larger];
  return (column, row) => {
    const [dx, dy] = [column - centre[0], row - centre[1]];
    const [x, y] = [c * dx + s * dy, -s * dx + c * dy];
    if (Math.hypot(x, y) > RADIUS_PX + 10) return 0;
    const rusty = places.reduce(
      (sum, spot) =>
        sum + spot.dark * Math.exp(-(((x - spot.x) / spot.r) ** 2) - ((y - spot.y) / spot.r) ** 2),
      0,
    );
    return (90 - rusty) / (1 + Math.exp((Math.hypot(x, y) - RADIUS_PX) / 0.5));
  };
}

function drawn(
  widthPx: number,
  heightPx: number,
  seed: number,
  levelAt: (x: number, y: number) => number,
): Gray {
  const grain = drawFrom(seed);
  const values = new Uint8Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      const level = levelAt(column + 0.5, row + 0.5) + grain.normal(0, 2);
      values[row * widthPx + column] = Math.max(0, Math.min(255, Math.round(level)));
    }
  return { widthPx, heightPx, values };
}
