/**
 * How much more a place on the push rod looks like red or orange paint than like metal, rust or dirt.
 *
 * Model    logarithm of the odds: a weighted sum of terms of the place's hue (u, v) and of how much brighter in red it is than is usual along
 *          the rod, r; all three as the mean of the places about it (paint is even where rust is granular), with squares and products;
 *          of how far that hue lies from the hue of the rust that is about; of the light, and of the place by itself;
 *          of the mean and the spread over all of the rod's width about there: a band goes all across and is even, rust is neither
 *          rust about: medians of what is redder than RUSTY beside the rod and on it far from the face; where little is, USUAL
 * Source   weights: paint-weights.ts
 */
import type { Hue } from './paint-light.ts';
import { CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { median } from './paint-numbers.ts';
import { columnOf, type Strip } from './paint-strip.ts';

/** Redder than bare metal in any light. */
const RUSTY = 0.3;
const USUAL: Hue = [0.75, 0.65];
const ENOUGH = 60;
/** Farther out than nearly any band. */
const FAR_MM = 32;
const POOL_MM = 1;
const RING_MM = 1.5;

export type PaintTerms = readonly (readonly (readonly number[] | null)[])[];

/** By place across, then by column; null where the picture ends. */
export function paintTerms(strip: Strip, map: PaintMap): PaintTerms {
  const rust = rustAbout(strip, map);
  const own = map.core.map((line) => {
    const usual = usualRed(strip, line);
    return line.map((cell) => (cell ? placeOf(cell, usual) : null));
  });
  const reach = Math.max(1, Math.round(POOL_MM / strip.stepMm));
  const rings = Array.from({ length: strip.columns }, (_, column) =>
    ringTerms(own, column, Math.max(1, Math.round(RING_MM / strip.stepMm))),
  );
  return map.core.map((line, row) =>
    line.map((cell, column) => {
      const place = own[row]?.[column];
      if (!cell || !place) return null;
      const near = termsOf(pooled(own, row, column, reach), place, Math.log(cell.light + 0.002), rust);
      return near.concat(rings[column] as readonly number[]);
    }),
  );
}

/** Of a line along the rod, 5 mm and more from the face. */
export const usualRed = (strip: Strip, line: readonly (PaintCell | null)[]): number =>
  median(line.slice(columnOf(strip, 5)).flatMap((cell) => cell?.red ?? []));

/** A logarithm. */
export const brighterBy = (red: number, usual: number): number => Math.log((red + 0.002) / (usual + 0.002));

type Place = readonly [u: number, v: number, r: number];
type Places = readonly (readonly (Place | null)[])[];
type Rust = { readonly hue: Hue; readonly share: number };

const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
const placeOf = ({ hue, red }: PaintCell, usual: number): Place => [
  within(hue[0], -1, 3),
  within(hue[1], -1.5, 2.5),
  within(brighterBy(red, usual), -1.2, 1.2),
];

function rustAbout(strip: Strip, map: PaintMap): Rust {
  const about = [...map.core.map((line) => line.slice(columnOf(strip, FAR_MM))), ...map.beside].flatMap(
    (line) => line.flatMap((cell) => cell?.hue ?? []),
  );
  // flatMap has taken the hues apart: u and v in turn.
  const [us, vs]: [number[], number[]] = [[], []];
  for (let i = 0; i < about.length; i += 2)
    if ((about[i] as number) > RUSTY) {
      us.push(about[i] as number);
      vs.push(about[i + 1] as number);
    }
  const known = Math.min(1, us.length / ENOUGH);
  const mixed = (values: readonly number[], usual: number) =>
    values.length === 0 ? usual : known * median(values) + (1 - known) * usual;
  return {
    hue: [mixed(us, USUAL[0]), mixed(vs, USUAL[1])],
    share: us.length / Math.max(1, about.length / 2),
  };
}

function pooled(own: Places, row: number, column: number, reach: number): Place {
  let [u, v, r, count] = [0, 0, 0, 0];
  for (let i = Math.max(0, row - 1); i <= Math.min(CORE.length - 1, row + 1); i += 1) {
    const line = own[i] as readonly (Place | null)[];
    for (let j = Math.max(0, column - reach); j <= Math.min(line.length - 1, column + reach); j += 1) {
      const place = line[j];
      if (!place) continue;
      u += place[0];
      v += place[1];
      r += place[2];
      count += 1;
    }
  }
  return [u / count, v / count, r / count];
}

function termsOf([u, v, r]: Place, own: Place, light: number, { hue, share }: Rust): readonly number[] {
  const [du, dv] = [u - hue[0], v - hue[1]];
  const over = (value: number, from: number) => Math.max(0, value - from);
  return [
    ...[1, u, v, r, u * u, v * v, u * v, r * r, u * r, v * r],
    ...[du, dv, du * du, dv * dv, du * dv, du * u, dv * u],
    ...[light, light * u, light * v, over(u, 0.3), over(u, 0.8), over(v, 0.5), over(dv, 0), over(du, 0)],
    ...[share, share * u, share * v, ...own],
  ];
}

function ringTerms(own: Places, column: number, reach: number): readonly number[] {
  const sums = new Float64Array(6);
  let count = 0;
  for (const line of own)
    for (let j = Math.max(0, column - reach); j <= Math.min(line.length - 1, column + reach); j += 1) {
      const place = line[j];
      if (!place) continue;
      for (let i = 0; i < 3; i += 1) {
        sums[i] = (sums[i] as number) + (place[i] as number);
        sums[i + 3] = (sums[i + 3] as number) + (place[i] as number) ** 2;
      }
      count += 1;
    }
  const mean = (i: number) => (sums[i] as number) / count;
  const spread = (i: number) => Math.sqrt(Math.max(0, mean(i + 3) - mean(i) ** 2));
  const [u, v, r] = [mean(0), mean(1), mean(2)];
  const [su, sv, sr] = [spread(0), spread(1), spread(2)];
  return [
    ...[u, v, r, u * u, v * v, r * r, u * v, u * r, v * r],
    ...[su, sv, sr, su * u, sv * u, sr * u, su * su],
  ];
}
