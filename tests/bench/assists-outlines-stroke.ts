/**
 * What the rim's outline brings for the stroke: the pairs of the sample media, marked as a hand would, adjusted with the rim's points as found,
 * with six set by a hand, and without. The band's diameter is not known where there is a tape.
 */
import { BAND_UNKNOWN } from '../../src/app/work/usual-references.ts';
import { drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { findBand } from '../../src/vision/assist-band.ts';
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import { type Truth, type TruthView, truthOf } from '../browser/main-job-truth.ts';
import { counter, type What } from '../simulation/marker.ts';
import { captureOf } from './accuracy-render-sample.ts';
import { grayOfFile } from './assists-marks-picture.ts';

type Px = readonly [number, number];
type Rim = 'none' | 'six by hand' | 'found';

const DRAWS = 12;
const TABLE_BAND = { diameterMm: 205.6, uDiameterMm: 1 };
const WAYS: readonly { readonly set: string; readonly rim: Rim; readonly references: References }[] = [
  ...(['none', 'six by hand', 'found'] as const).map((rim) => ({
    set: 'pair-tape',
    rim,
    references: {
      ...NO_REFERENCES,
      tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
      clampBand: rim === 'none' ? null : BAND_UNKNOWN,
    },
  })),
  ...(['six by hand', 'found'] as const).map((rim) => ({
    set: 'pair-band',
    rim,
    references: { ...NO_REFERENCES, clampBand: TABLE_BAND },
  })),
];

export function strokeTable(): string {
  const rows = WAYS.map(({ set, rim, references }) => {
    const truth = truthOf(set);
    const found = truth.views.map((view) => (rim === 'found' ? rimFound(set, view) : []));
    const measured = Array.from({ length: DRAWS }, (_, i) =>
      strokeOf(truth, found, rim, references, 900 + i),
    );
    const good = measured.flatMap((each) => each ?? []);
    const offs = good.map(({ offMm }) => Math.abs(offMm));
    const us = good.map(({ u95Mm }) => u95Mm);
    const within = good.filter(({ offMm, u95Mm }) => Math.abs(offMm) <= u95Mm).length;
    return `| ${set} | ${rim} | ${good.length} of ${DRAWS} | ${middle(offs)} | ${Math.max(...offs).toFixed(2)} | ${middle(us)} | ${within} |`;
  });
  return [
    '| sample media | rim | measured | off, median mm | largest | U95, median mm | within U95 |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

function middle(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.floor(sorted.length / 2)] ?? Number.NaN).toFixed(2);
}

function rimFound(set: string, { state, points }: TruthView): readonly FoundMark[] {
  const found = findBand(grayOfFile(`sample-media/${set}/${state}.jpg`), {
    facePx: points.chamberFace.px,
    pinPx: points.clevisPin.px,
    nearPx: null,
  });
  return found.ok ? found.value.marks : [];
}

function strokeOf(
  truth: Truth,
  found: readonly (readonly FoundMark[])[],
  rim: Rim,
  references: References,
  seed: number,
) {
  const draw = drawFrom(seed);
  const nextId = counter();
  const views = truth.views.map(({ state, points }, i): View => {
    const marks: Mark[] = [];
    const put = ([u, v]: Px, what: What, sigmaPx: number) => {
      const [xPx, yPx] = [u + draw.normal(0, sigmaPx), v + draw.normal(0, sigmaPx)];
      marks.push({ ...what, id: nextId(), xPx, yPx, sigmaPx, placedBy: 'hand' });
    };
    put(points.chamberFace.px, { kind: 'chamber-face' }, HAND_PX);
    put(points.clevisPin.px, { kind: 'clevis-pin' }, HAND_PX);
    for (const { inches, px } of points.tapeGraduations ?? [])
      if (references.tape && Number.isInteger(inches))
        put(px, { kind: 'tape-graduation', readingMm: 25.4 * inches }, TAPE_PX);
    const seen = points.clampBand.filter(({ visible }) => visible);
    if (rim === 'six by hand')
      for (let k = 0; k < 6; k++) {
        const at = seen[Math.round(((k + 0.5) * seen.length) / 6 - 0.5)];
        if (at) put(at.px, { kind: 'clamp-band' }, HAND_PX);
      }
    for (const { placePx, sigmaPx } of found[i] ?? [])
      marks.push({
        kind: 'clamp-band',
        id: nextId(),
        xPx: placePx[0],
        yPx: placePx[1],
        sigmaPx,
        placedBy: 'assist',
      });
    return { state, captureId: `c${i}`, frame: null, marks };
  });
  const result = measure({
    views,
    sideViews: [],
    captures: truth.views.map((view, i) => captureOf(view, `c${i}`)),
    cameraStill: false,
    cameraProfile: null,
    references,
  });
  if (!result.ok) return null;
  const { value, U95 } = result.value.strokeMm;
  return { offMm: value - truth.strokeMm, u95Mm: U95 };
}

/** A finger with the loupe on a phone's picture of 12 million pixels; a graduation as its assist finds it. */
const HAND_PX = 2;
const TAPE_PX = 0.3;
