/**
 * What people get wrong with a sound scene: marks on the wrong thing, readings and sizes misread, pictures mixed up.
 * A mistake that the scene does not allow (no tape to misread) gives null.
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { Mark, MarkKind } from '../../src/marks/mark.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import type { References } from '../../src/references/reference.ts';
import type { AnyScene } from './any-scene.ts';

const INCH_MM = 25.4;

type Mistake = (scene: AnyScene, draw: Draw) => MeasureInput | null;

/** In the order of the table; the name says what the person did. */
export const MISTAKES = {
  none: ({ input }) => input,
  'one mark anywhere in its picture': anywhere(1),
  'two marks anywhere in their picture': anywhere(2),
  'five marks anywhere in their picture': anywhere(5),
  'pin and camshaft end exchanged, applied': exchanged('clevis-pin', 'camshaft-end', false),
  'pin and camshaft end exchanged, both pictures': exchanged('clevis-pin', 'camshaft-end', true),
  'face and pin exchanged, applied': exchanged('chamber-face', 'clevis-pin', false),
  'face and pin exchanged, both pictures': exchanged('chamber-face', 'clevis-pin', true),
  'pin 3 mm short of its place along the rod, applied': slipped('clevis-pin', 3, false),
  'pin 10 mm short of its place along the rod, applied': slipped('clevis-pin', 10, false),
  'face mark 10 mm out along the rod, applied': slipped('chamber-face', -10, false),
  "rim on the band's far edge (25 mm), applied": slipped('clamp-band', 25, false),
  "rim on the band's far edge (25 mm), both pictures": slipped('clamp-band', 25, true),
  'one graduation misread by 1 in': misread('one'),
  'all graduations misread by 1 in, applied': misread('applied'),
  'all graduations misread by 1 in, both pictures': misread('both'),
  'applied picture mirrored': mirrored(false),
  'both pictures mirrored': mirrored(true),
  'released and applied exchanged': statesExchanged,
  'camera said to stand still, but moved': ({ input }) =>
    input.cameraStill ? null : { ...input, cameraStill: true },
  'tape said to be unmoved, but moved': ({ input, options }) =>
    input.references.tape && !options.tapeUnmoved
      ? withReferences(input, { tape: { ...input.references.tape, unmoved: true } })
      : null,
  'arm read half an inch short': ({ input }) => {
    const { armLength } = input.references;
    if (!armLength) return null;
    return withReferences(input, { armLength: { ...armLength, lengthMm: armLength.lengthMm - INCH_MM / 2 } });
  },
  'chamber taken for one 8 % smaller': ({ input }) => {
    const { clampBand } = input.references;
    if (!clampBand) return null;
    return withReferences(input, { clampBand: { ...clampBand, diameterMm: clampBand.diameterMm / 1.08 } });
  },
  'known distance typed 10 % short': ({ input }) => {
    const { distance } = input.references;
    if (!distance) return null;
    return withReferences(input, { distance: { ...distance, distanceMm: distance.distanceMm * 0.9 } });
  },
} as const satisfies Readonly<Record<string, Mistake>>;

export type MistakeName = keyof typeof MISTAKES;
export const MISTAKE_NAMES = Object.keys(MISTAKES) as readonly MistakeName[];

export function spoiled(scene: AnyScene, name: MistakeName, seed: number): MeasureInput | null {
  return MISTAKES[name](scene, drawFrom(seed));
}

type Change = (mark: Mark, viewIndex: number) => Mark;

function changed(input: MeasureInput, change: Change): MeasureInput {
  const views = input.views.map((view, i) => ({ ...view, marks: view.marks.map((mark) => change(mark, i)) }));
  return { ...input, views };
}

function withReferences(input: MeasureInput, references: Partial<References>): MeasureInput {
  return { ...input, references: { ...input.references, ...references } };
}

/** Released is the first view, applied the second. */
const APPLIED = 1;

function anywhere(count: number): Mistake {
  return ({ input, options }, draw) => {
    const ids = input.views.flatMap((view) => view.marks.map(({ id }) => id));
    const chosen = new Set<string>();
    while (chosen.size < count) chosen.add(ids[Math.floor(draw.uniform(0, ids.length))] as string);
    const [widthPx, heightPx] = [options.widthPx as number, options.heightPx as number];
    return changed(input, (mark) =>
      chosen.has(mark.id) ? { ...mark, xPx: draw.uniform(0, widthPx), yPx: draw.uniform(0, heightPx) } : mark,
    );
  };
}

function exchanged(a: MarkKind, b: MarkKind, everywhere: boolean): Mistake {
  return ({ input }) => {
    if (!input.views.every(({ marks }) => [a, b].every((kind) => marks.some((m) => m.kind === kind))))
      return null;
    return changed(input, (mark, i) => {
      if (!everywhere && i !== APPLIED) return mark;
      const other = mark.kind === a ? b : mark.kind === b ? a : null;
      const place = input.views[i]?.marks.find((m) => m.kind === other);
      return place ? { ...mark, xPx: place.xPx, yPx: place.yPx } : mark;
    });
  };
}

/** Marks of a kind moved towards the chamber, by the picture's own scale along the rod. */
function slipped(kind: MarkKind, byMm: number, everywhere: boolean): Mistake {
  return ({ input, truth }) => {
    if (!input.views.some(({ marks }) => marks.some((m) => m.kind === kind))) return null;
    return changed(input, (mark, i) => {
      if (mark.kind !== kind || (!everywhere && i !== APPLIED)) return mark;
      const [face, pin] = (['chamber-face', 'clevis-pin'] as const).map((end) =>
        input.views[i]?.marks.find((m) => m.kind === end),
      ) as [Mark, Mark];
      const reachMm = truth.releasedReachMm + (i === APPLIED ? truth.strokeMm : 0);
      const [dx, dy] = [(face.xPx - pin.xPx) / reachMm, (face.yPx - pin.yPx) / reachMm];
      return { ...mark, xPx: mark.xPx + byMm * dx, yPx: mark.yPx + byMm * dy };
    });
  };
}

function misread(which: 'one' | 'applied' | 'both'): Mistake {
  return ({ input }, draw) => {
    const ofTape = (i: number) => input.views[i]?.marks.filter((m) => m.kind === 'tape-graduation') ?? [];
    const one = ofTape(APPLIED)[Math.floor(draw.uniform(0, ofTape(APPLIED).length))];
    if (!one) return null;
    return changed(input, (mark, i) => {
      if (mark.kind !== 'tape-graduation') return mark;
      const isMisread = which === 'both' || (which === 'applied' ? i === APPLIED : mark.id === one.id);
      return isMisread ? { ...mark, readingMm: mark.readingMm + INCH_MM } : mark;
    });
  };
}

function mirrored(everywhere: boolean): Mistake {
  return ({ input, options }) =>
    changed(input, (mark, i) =>
      everywhere || i === APPLIED ? { ...mark, xPx: (options.widthPx as number) - mark.xPx } : mark,
    );
}

function statesExchanged({ input }: AnyScene): MeasureInput {
  const other = { released: 'applied', applied: 'released', pulled: 'pulled' } as const;
  return { ...input, views: input.views.map((view) => ({ ...view, state: other[view.state] })) };
}
