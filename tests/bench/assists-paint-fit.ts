/**
 * npx tsx tests/bench/assists-paint-fit.ts: the weights of the over-stroke mark's judge, fitted to painted scenes, written to
 * src/vision/paint-weights.ts.
 *
 * Model    first the places: logistic regression with a ridge of paint against what else lies on rods, both alike in weight;
 *          then the stretches: the same over the pieces of their properties and, for red or orange, the products of these; of each scene the
 *          stretch that is weighed highest counts, so that is chosen anew and fitted again, a few times
 *          the sets of red or orange stretches have no say in the places, by whose odds stretches are looked for and measured
 *          cross-validation of the second by scenes, in FOLDS parts
 * Assumes  scenes of sets that are not held back; --kept: only those whose pictures are kept already
 */
import { writeFileSync } from 'node:fs';
import { bandEnds, loudnessOf, redLoudness } from '../../src/vision/paint-ends.ts';
import type { BandColour } from '../../src/vision/paint-hues.ts';
import { rodMap } from '../../src/vision/paint-judge.ts';
import { rodLook } from '../../src/vision/paint-look.ts';
import { paintTerms } from '../../src/vision/paint-odds.ts';
import { type PaintRun, paintRuns } from '../../src/vision/paint-run.ts';
import {
  OTHER_PROPERTIES,
  PROPERTIES,
  type Property,
  pairedOffs,
  pairProducts,
  pieceCount,
  piecesOf,
} from '../../src/vision/paint-score.ts';
import type { RunWeights } from '../../src/vision/paint-weights.ts';
import {
  FIFTH,
  FOURTH,
  MANY,
  MANY_MORE,
  MANY_SMALL,
  type Ranges,
  type SceneDraw,
  SEVENTH,
  SIXTH,
  SMALL,
  THIRD,
  TUNING,
  WIDER,
} from './assists-paint-draws.ts';
import { fitPlaces, type Looked, type Places, samplePlaces } from './assists-paint-fit-places.ts';
import { isKept, keptPicture } from './assists-paint-kept.ts';
import { logisticFit } from './assists-paint-logistic.ts';
import {
  type Counts,
  HELD_BACK_COUNTS,
  MANY_COUNTS,
  MANY_MORE_COUNTS,
  SMALL_COUNTS,
  scenesOf,
  THIRD_COUNTS,
  TUNING_COUNTS,
  WIDER_COUNTS,
} from './assists-paint-plan.ts';

type Way = { readonly properties: readonly Property[]; readonly ridge: number; readonly rounds: number };
const RED: Way = { properties: PROPERTIES, ridge: 20, rounds: 2 };
const OTHER: Way = { properties: OTHER_PROPERTIES, ridge: 3, rounds: 3 };
const FOLDS = 4;

/** Scenes for the places, for stretches of red or orange, for those of other colours. */
export type FitScenes = Readonly<Record<'places' | 'red' | 'other', () => Iterable<Looked>>>;

export function fitAll(scenes: FitScenes): void {
  const sampled: Places = { terms: [], painted: [] };
  for (const each of scenes.places()) samplePlaces(each, sampled);
  const places = fitPlaces(sampled);

  const red = measured(scenes.red(), () => ['red or orange'], places);
  const other = measured(scenes.other(), otherColours, places);
  validated(red, RED, 'red or orange');
  validated(other, OTHER, 'other colours');
  write(
    places,
    named(fitRuns(red.stretches, RED), PROPERTIES),
    named(fitRuns(other.stretches, OTHER), OTHER_PROPERTIES),
  );
}

type Measured = { readonly stretches: readonly Stretch[]; readonly truths: ReadonlyMap<number, Truth> };

function measured(
  of: Iterable<Looked>,
  coloursOf: (each: Looked, index: number) => readonly BandColour[],
  places: readonly number[],
): Measured {
  const stretches: Stretch[] = [];
  const truths = new Map<number, Truth>();
  let index = 0;
  for (const each of of) {
    for (const colour of coloursOf(each, index)) {
      stretches.push(...stretchesOf(each, index, colour, places));
      truths.set(index, truthOf(each, colour));
    }
    index += 1;
  }
  return { stretches, truths };
}

type Stretch = {
  readonly scene: number;
  readonly pieces: Readonly<Record<string, readonly number[]>>;
  /** Products of properties, of red or orange. */
  readonly products: readonly number[];
  /** Null: neither, or only a part of the band. */
  readonly isBand: boolean | null;
};

/** What a scene is to the validation. */
type Truth = 'shown' | 'none' | null;

function truthOf({ scene: { kind }, paintMm }: Looked, colour: BandColour): Truth {
  if (kind.is === 'bare' || kind.is === 'confuser' || (colour !== 'red or orange' && kind.is === 'band'))
    return 'none';
  return (kind.is === 'band' || (kind.is === 'other colour' && kind.what === colour)) && paintMm >= 1.5
    ? 'shown'
    : null;
}

function stretchesOf(
  looked: Looked,
  index: number,
  colour: BandColour,
  placeWeights: readonly number[],
): readonly Stretch[] {
  const { scene, paintMm, strip, edges, map } = looked;
  const { kind, band } = scene;
  const loudness =
    colour === 'red or orange'
      ? redLoudness(paintTerms(strip, map), placeWeights)
      : loudnessOf(strip, map, colour);
  const named =
    kind.is === 'other colour'
      ? kind.what === colour
      : (kind.is === 'band' || kind.is === 'barely') && colour === 'red or orange';
  const none = truthOf(looked, colour) === 'none';
  const isBand = (run: PaintRun) => {
    if (none) return false;
    return named && band && paintMm >= 1 && Math.abs(run.toMm - band.outMm) < 2 + 0.2 * band.outMm
      ? true
      : null;
  };
  const look = rodLook(strip, edges, map);
  const ends = bandEnds(strip, map, loudness, colour === 'red or orange' ? look.sums : null);
  return paintRuns(strip, map, loudness, colour, look, ends).map((run) => ({
    scene: index,
    pieces: Object.fromEntries(PROPERTIES.map((property) => [property, piecesOf(property, run)])),
    products: colour === 'red or orange' ? pairProducts(pairedOffs(run)) : [],
    isBand: isBand(run),
  }));
}

/** Of a band its own colour; of half of what has none each of them in turn. */
function otherColours({ scene: { kind } }: Looked, index: number): readonly BandColour[] {
  if (kind.is === 'other colour') return [kind.what];
  const turn = (['yellow', 'white', 'green', 'blue'] as const)[Math.floor(index / 2) % 4] as BandColour;
  return (kind.is === 'bare' || kind.is === 'confuser' || kind.is === 'band') && index % 2 === 0
    ? [turn]
    : [];
}

const rowOf = ({ pieces, products }: Stretch, properties: readonly Property[]): number[] => [
  1,
  ...properties.flatMap((property) => pieces[property] ?? []),
  ...products,
];

function fitRuns(all: readonly Stretch[], { properties, ridge, rounds }: Way): readonly number[] {
  const known = all.filter(({ isBand }) => isBand !== null);
  const rows = known.map((each) => rowOf(each, properties));
  let use = known.map((_, i) => i);
  let weights: readonly number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    if (round > 0) {
      const best = new Map<number, number>();
      rows.forEach((row, i) => {
        const { scene } = known[i] as Stretch;
        const before = best.get(scene);
        if (before === undefined || dot(row, weights) > dot(rows[before] as number[], weights))
          best.set(scene, i);
      });
      use = [...best.values()];
    }
    weights = logisticFit(
      use.map((i) => rows[i] as number[]),
      use.map((i) => (known[i]?.isBand ? 1 : 0)),
      use.map(() => 1),
      ridge,
    );
  }
  return weights;
}

function validated({ stretches: all, truths }: Measured, way: Way, name: string): void {
  const highest = new Map<number, { z: number; truth: Truth }>(
    [...truths].map(([scene, truth]) => [scene, { z: Number.NEGATIVE_INFINITY, truth }]),
  );
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const out = (scene: number) => (scene * 7) % FOLDS === fold;
    const weights = fitRuns(
      all.filter(({ scene }) => !out(scene)),
      way,
    );
    for (const each of all.filter(({ scene }) => out(scene))) {
      const z = dot(rowOf(each, way.properties), weights);
      const before = highest.get(each.scene);
      if (before && z > before.z) highest.set(each.scene, { ...before, z });
    }
  }
  const of = (truth: Truth) => [...highest.values()].filter((each) => each.truth === truth).map(({ z }) => z);
  const [shown, none] = [of('shown'), of('none')];
  console.log(`${name}: ${shown.length} shown, ${none.length} with none`);
  const share = (values: readonly number[], holds: (z: number) => boolean) =>
    values.filter(holds).length / values.length;
  for (const p of [0.03, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]) {
    const z = Math.log(p / (1 - p));
    console.log(
      `  ${p}: seen above ${share(shown, (each) => each > z).toFixed(3)}, false alarms ${share(none, (each) => each > z).toFixed(3)}`,
    );
  }
}

const dot = (row: readonly number[], weights: readonly number[]) => {
  let sum = 0;
  for (let i = 0; i < row.length; i += 1) sum += (row[i] as number) * (weights[i] ?? 0);
  return sum;
};

function named([bias, ...weights]: readonly number[], properties: readonly Property[]): RunWeights {
  let at = 0;
  return {
    bias: rounded(bias ?? 0),
    weights: Object.fromEntries(
      properties.map((property) => {
        const count = pieceCount(property);
        at += count;
        return [property, weights.slice(at - count, at).map(rounded)];
      }),
    ),
    pairs: weights.slice(at).map(rounded),
  };
}

function write(places: readonly number[], red: RunWeights, other: RunWeights): void {
  const text = (value: unknown) => JSON.stringify(value);
  writeFileSync(
    'src/vision/paint-weights.ts',
    `/** Weights of the over-stroke mark's judge, fitted as tests/bench/assists-paint-fit.ts says, which writes this file. */

/** Of the terms of paint-odds.ts. */
export const PLACE_WEIGHTS: readonly number[] = ${text(places.map((value) => Math.round(value * 1000) / 1000))};

export type RunWeights = { readonly bias: number; readonly weights: Readonly<Record<string, readonly number[]>>;
  /** Of the products of PAIRED, in their order; none where they are not weighed. */
  readonly pairs: readonly number[];
};

/** Of the properties of paint-score.ts, a weight for each piece between its knots. */
export const RED_WEIGHTS: RunWeights = ${text(red)};

export const OTHER_WEIGHTS: RunWeights = ${text(other)};
`,
  );
}

const rounded = (value: number) => Math.round(value * 100) / 100;

function* lookedAt(scenes: readonly SceneDraw[], keptOnly: boolean): Iterable<Looked> {
  for (const scene of scenes) {
    if (keptOnly && !isKept(scene)) continue;
    const { region, rod, paintMm } = keptPicture(scene, false);
    yield { scene, paintMm, rodPxPerMm: rod.pxPerMm, ...rodMap(region, rod) };
  }
}

if (process.argv[1]?.endsWith('assists-paint-fit.ts')) {
  const keptOnly = process.argv.includes('--kept');
  const looked = (sets: readonly (readonly [Ranges, Counts])[]) => () =>
    lookedAt(
      sets.flatMap((set) => scenesOf(...set)),
      keptOnly,
    );
  const first = [
    [TUNING, TUNING_COUNTS],
    [WIDER, WIDER_COUNTS],
    [SMALL, SMALL_COUNTS],
  ] as const;
  fitAll({
    places: looked([...first, [THIRD, THIRD_COUNTS]]),
    red: looked([
      [FOURTH, THIRD_COUNTS],
      [FIFTH, THIRD_COUNTS],
      [SIXTH, THIRD_COUNTS],
      [SEVENTH, HELD_BACK_COUNTS],
      [MANY_SMALL, MANY_MORE_COUNTS],
      [MANY, MANY_COUNTS],
      [MANY_MORE, MANY_MORE_COUNTS],
    ]),
    other: looked(first),
  });
}
