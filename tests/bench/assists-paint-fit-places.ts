/** Of the fit of the over-stroke mark's judge (assists-paint-fit.ts) its first part: the odds of places on the rod. */
import { drawFrom } from '../../src/basics/random.ts';
import type { RodEdges } from '../../src/vision/paint-edges.ts';
import type { PaintMap } from '../../src/vision/paint-map.ts';
import { paintTerms } from '../../src/vision/paint-odds.ts';
import { alongOf, type Strip } from '../../src/vision/paint-strip.ts';
import type { SceneDraw } from './assists-paint-draws.ts';
import { logisticFit } from './assists-paint-logistic.ts';

/** What the fits need of a scene's picture. */
export type Looked = {
  readonly scene: SceneDraw;
  readonly paintMm: number;
  readonly rodPxPerMm: number;
  readonly strip: Strip;
  readonly edges: RodEdges;
  readonly map: PaintMap;
};

const PAINT_PLACES = 40;
const OTHER_PLACES = 55;
const PLACE_RIDGE = 5;

export type Places = { readonly terms: (readonly number[])[]; readonly painted: number[] };

export function fitPlaces({ terms, painted }: Places): readonly number[] {
  const share = painted.reduce((sum, y) => sum + y, 0) / painted.length;
  console.log(`${terms.length} places, share of paint ${share.toFixed(3)}`);
  const weights = painted.map((y) => 0.5 / (y === 1 ? share : 1 - share));
  return logisticFit(terms, painted, weights, PLACE_RIDGE);
}

/** Where the scene has the band along the strip, and where it surely has none. */
export function samplePlaces({ scene, rodPxPerMm, strip, map }: Looked, to: Places): void {
  if (scene.kind.is !== 'band' && scene.kind.is !== 'bare' && scene.kind.is !== 'confuser') return;
  const terms = paintTerms(strip, map);
  const draw = drawFrom(scene.seed + 77);
  const trueMm = rodPxPerMm / (scene.stand.pxPerMm * Math.cos((scene.stand.yawDeg * Math.PI) / 180));
  const [ofPaint, ofOther]: [(readonly number[])[], (readonly number[])[]] = [[], []];
  for (let column = 0; column < strip.columns; column += 1) {
    const mm = alongOf(strip, column) * trueMm;
    const is = hasPaint(scene, mm);
    if (is === null) continue;
    for (const line of terms) {
      const place = line[column];
      if (place) (is ? ofPaint : ofOther).push(place);
    }
  }
  for (const [list, most, y] of [
    [ofPaint, PAINT_PLACES, 1],
    [ofOther, OTHER_PLACES, 0],
  ] as const)
    for (let i = 0; i < Math.min(most, list.length); i += 1) {
      to.terms.push(list[Math.floor(draw.uniform(0, list.length))] as readonly number[]);
      to.painted.push(y);
    }
}

function hasPaint({ band }: SceneDraw, mm: number): boolean | null {
  if (mm < 0.8 || mm > 50) return null;
  if (!band) return false;
  const begin = Math.max(0, band.outMm - band.lengthMm);
  if (mm > begin + 0.8 && mm < band.outMm - 0.8) return true;
  return mm > band.outMm + 1.5 || mm < begin - 1 ? false : null;
}
