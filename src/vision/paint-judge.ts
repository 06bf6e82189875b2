/**
 * The over-stroke mark by the picture: paint seen, not seen, or cannot tell, with the reason. A proposal; a person decides.
 *
 * Model    the region about the rod is turned (paint-strip), its light taken out (paint-light), the rod's edges found (paint-edges); for
 *          each colour of paint every place where a band may end (paint-ends) is weighed (paint-run, paint-score): the highest
 *          probability counts, what is seen by its colour's own bounds before what is doubtful
 * Assumes  face and way of the rod as marks give them, within a few millimetres and degrees
 * Fails    says 'cannot tell' where the rod near the face is dark, burnt out, blurred, hidden, small or outside the picture, where the
 *          picture is in grays, and where the probability is neither high nor low
 */
import { type Clear, clearOf } from './paint-clear.ts';
import { rodEdges } from './paint-edges.ts';
import { bandEnds, loudnessOf } from './paint-ends.ts';
import type { BandColour } from './paint-hues.ts';
import { lightHue, neutralHues } from './paint-light.ts';
import { type RodLook, rodLook } from './paint-look.ts';
import { type PaintMap, paintMap } from './paint-map.ts';
import { cropBox, type PaintRegion, type RodLine } from './paint-region.ts';
import { type PaintRun, paintRuns } from './paint-run.ts';
import { type Property, type Score, scoreOf } from './paint-score.ts';
import { paintStrip, type Strip } from './paint-strip.ts';
import type { Rect } from './rect.ts';

export type PaintReason =
  /** A band of paint, from and to along the rod from the face, this share of it covered. */
  | {
      readonly code: 'paint/band';
      readonly colour: BandColour;
      readonly fromMm: number;
      readonly toMm: number;
      readonly covered: number;
    }
  | { readonly code: 'paint/bare' }
  /** Something has a paint's hue but is no band, most by this property; or might be one. */
  | {
      readonly code: 'paint/no-band' | 'paint/doubtful';
      readonly fromMm: number;
      readonly toMm: number;
      readonly against: Property;
    }
  | { readonly code: 'paint/too-dark'; readonly light: number }
  | { readonly code: 'paint/glare'; readonly share: number }
  | { readonly code: 'paint/blurred'; readonly blurMm: number }
  | { readonly code: 'paint/too-small'; readonly pxPerMm: number }
  | { readonly code: 'paint/rod-hidden'; readonly edges: number }
  | { readonly code: 'paint/outside-the-picture'; readonly share: number }
  /** A picture in grays: no hue tells paint from metal. */
  | { readonly code: 'paint/no-colour' }
  /** White was named: too like bare metal. */
  | { readonly code: 'paint/white' }
  /** Frames of one clip say different things. */
  | { readonly code: 'paint/frames-differ'; readonly seen: number; readonly of: number };

export type PaintSight = 'seen' | 'not-seen' | 'cannot-tell';

export type PaintJudgement = {
  readonly sight: PaintSight;
  /** That this sight is right, 0 to 1; of 'cannot tell' that neither of the others should be said. */
  readonly confidence: number;
  readonly reason: PaintReason;
  /** The part of the picture that it was judged from. */
  readonly crop: Rect;
};

export type PaintHints = {
  /** Null: any. */
  readonly bandColour: BandColour | null;
  /** Parts of the picture that are known to be gray. */
  readonly neutral: readonly Rect[];
};

export const NO_HINTS: PaintHints = { bandColour: null, neutral: [] };

/** Probabilities to which paint is not seen, and from which it is; red's by scenes that had no say in the weights they were judged with. */
type Bounds = { readonly notSeenTo: number; readonly seenFrom: number };
const RED: Bounds = { notSeenTo: 0.22, seenFrom: 0.78 };
const NAMED: Bounds = { notSeenTo: 0.1, seenFrom: 0.4 };
/** Few bands have another hue than red or orange: where nobody named it, it must be surer. */
const OTHER: Bounds = { notSeenTo: 0.6, seenFrom: 0.95 };
/** White is not told from bare metal. */
const UNASKED: readonly BandColour[] = ['red or orange', 'yellow', 'green', 'blue'];
/** Below: 20 of 255 as stored. */
const DARK = 0.006;
const BURNT_SHARE = 0.6;
/** A mark out by 2 mm is smeared to nothing. */
const BLUR_MM = 2.5;
const LEAST_PX_PER_MM = 1.2;
const LEAST_EDGES = 0.35;
const LEAST_IN_PICTURE = 0.7;
/** Levels of 255 by which the colours of a pixel differ at most in a picture in grays. */
const GRAY_WITHIN = 2;

export function judgePaint(region: PaintRegion, rod: RodLine, hints: PaintHints = NO_HINTS): PaintJudgement {
  const crop = cropBox(rod, region);
  const cannot = (reason: PaintReason, confidence = 0.9): PaintJudgement => ({
    sight: 'cannot-tell',
    confidence,
    reason,
    crop,
  });
  if (hints.bandColour === 'white') return cannot({ code: 'paint/white' });
  if (rod.pxPerMm < LEAST_PX_PER_MM) return cannot({ code: 'paint/too-small', pxPerMm: rod.pxPerMm });
  const { strip, edges, map } = rodMap(region, rod, hints);
  const clear = clearOf(strip, edges, map);
  const unclear = whyUnclear(clear);
  if (unclear) return cannot(unclear);
  if (isGray(region)) return cannot({ code: 'paint/no-colour' });

  const look = rodLook(strip, edges, map);
  const colours = hints.bandColour ? [hints.bandColour] : UNASKED;
  const best = colours
    .flatMap((colour) => bestOf(runsOf(strip, map, look, colour)) ?? [])
    .map((each) => ({ ...each, bounds: boundsOf(each.run.colour, hints.bandColour) }))
    .reduce<Bounded | null>((first, each) => (!first || rankOf(each) > rankOf(first) ? each : first), null);
  if (best && best.score.probability >= best.bounds.seenFrom) {
    const { colour, fromMm, toMm, covered } = best.run;
    const reason = { code: 'paint/band', colour, fromMm: Math.max(0, fromMm), toMm, covered } as const;
    return { sight: 'seen', confidence: best.score.probability, reason, crop };
  }
  const probability = best?.score.probability ?? 0;
  if (best && probability > best.bounds.notSeenTo)
    return cannot(stretchReason('paint/doubtful', best), 1 - Math.abs(2 * probability - 1));
  if (clear.blurMm > BLUR_MM) return cannot({ code: 'paint/blurred', blurMm: clear.blurMm });
  const reason =
    best && probability > 0.02 ? stretchReason('paint/no-band', best) : ({ code: 'paint/bare' } as const);
  return { sight: 'not-seen', confidence: 1 - probability, reason, crop };
}

function isGray({ rgba }: PaintRegion): boolean {
  for (let i = 0; i < rgba.length; i += 4) {
    const [r, g, b] = [rgba[i] as number, rgba[i + 1] as number, rgba[i + 2] as number];
    if (Math.max(r, g, b) - Math.min(r, g, b) > GRAY_WITHIN) return false;
  }
  return true;
}

export function rodMap(region: PaintRegion, rod: RodLine, hints: PaintHints = NO_HINTS) {
  const strip = paintStrip(region, rod);
  const edges = rodEdges(strip);
  return {
    strip,
    edges,
    map: paintMap(strip, edges, lightHue(strip.linear, neutralHues(region, hints.neutral))),
  };
}

function runsOf(strip: Strip, map: PaintMap, look: RodLook, colour: BandColour): readonly PaintRun[] {
  const loudness = loudnessOf(strip, map, colour);
  // The other colours' weights were fitted without such candidates.
  const ends = bandEnds(strip, map, loudness, colour === 'red or orange' ? look.sums : null);
  return paintRuns(strip, map, loudness, colour, look, ends);
}

type Weighed = { readonly run: PaintRun; readonly score: Score };

type Bounded = Weighed & { readonly bounds: Bounds };

function boundsOf(colour: BandColour, named: BandColour | null): Bounds {
  if (colour === 'red or orange') return RED;
  return named ? NAMED : OTHER;
}

/** Seen before doubtful before not seen; then by how probable. */
function rankOf({ score: { probability }, bounds }: Bounded): number {
  if (probability >= bounds.seenFrom) return 2 + probability;
  return (probability > bounds.notSeenTo ? 1 : 0) + probability;
}

function bestOf(runs: readonly PaintRun[]): Weighed | null {
  return runs
    .map((run) => ({ run, score: scoreOf(run) }))
    .reduce<Weighed | null>(
      (best, each) => (!best || each.score.probability > best.score.probability ? each : best),
      null,
    );
}

function stretchReason(code: 'paint/no-band' | 'paint/doubtful', { run, score }: Weighed): PaintReason {
  return { code, fromMm: Math.max(0, run.fromMm), toMm: run.toMm, against: score.against };
}

function whyUnclear({ light, glare, edges, inPicture }: Clear): PaintReason | null {
  if (inPicture < LEAST_IN_PICTURE) return { code: 'paint/outside-the-picture', share: inPicture };
  if (light < DARK) return { code: 'paint/too-dark', light };
  if (glare > BURNT_SHARE) return { code: 'paint/glare', share: glare };
  if (edges < LEAST_EDGES) return { code: 'paint/rod-hidden', edges };
  return null;
}
