/** A ray-traced pair as somebody would have marked it: true image points with the hand's scatter, the target as it was found. */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { counter, type What } from '../simulation/marker.ts';
import type { Sample } from './accuracy-case.ts';
import type { SigmaPx } from './accuracy-cells.ts';
import type { RenderedPair, RenderedView } from './accuracy-render-truth.ts';

export type FoundCorner = {
  readonly marker: number;
  readonly corner: number;
  readonly xPx: number;
  readonly yPx: number;
  readonly sigmaPx: number;
};

export type With = { readonly band: boolean; readonly held: boolean };

/** found: corners of the target in each view, none where there is no target. */
export function sampleOf(
  pair: RenderedPair,
  found: readonly (readonly FoundCorner[])[],
  used: With,
  sigmaPx: SigmaPx,
  seed: number,
): Sample {
  const draw = drawFrom(seed);
  const nextId = counter();
  const tied = (view: RenderedView) => view.fixedThings.filter(({ name }) => inAll(pair, name));
  const views = pair.views.map((view, i): View => {
    const marks: Mark[] = [];
    const put = ([u, v]: readonly [number, number], what: What) => {
      const [xPx, yPx] = [u + draw.normal(0, sigmaPx), v + draw.normal(0, sigmaPx)];
      marks.push({ ...what, id: nextId(), xPx, yPx, sigmaPx, placedBy: 'hand' });
    };
    for (let again = 0; again < (sigmaPx === 1 ? 3 : 1); again++) {
      put(view.chamberFace, { kind: 'chamber-face' });
      put(view.clevisPin, { kind: 'clevis-pin' });
    }
    put(view.camshaftEnd, { kind: 'camshaft-end' });
    for (const at of view.rodLine) put(at, { kind: 'rod-line' });
    for (const { name, px } of tied(view)) put(px, { kind: 'tie-point', tie: name });
    if (used.band) for (const at of view.clampBand) put(at, { kind: 'clamp-band' });
    if (used.held) {
      for (const { inches, px } of view.tapeGraduations)
        if (Number.isInteger(inches)) put(px, { kind: 'tape-graduation', readingMm: 25.4 * inches });
      for (const corner of found[i] ?? [])
        marks.push({ kind: 'target-corner', id: nextId(), placedBy: 'assist', ...corner });
    }
    return { state: view.state, captureId: `c${i}`, frame: null, marks };
  });
  const offDeg = pair.views.reduce((sum, view) => sum + view.offSquareDeg, 0) / pair.views.length;
  return {
    seed,
    input: {
      views,
      sideViews: [],
      captures: pair.views.map((_v, i) => captureOf(pair, `c${i}`)),
      cameraStill: false,
      cameraProfile: null,
      references: referencesOf(draw, pair, used),
    },
    truth: { strokeMm: pair.strokeMm, armAngleAppliedRad: (pair.armAngleAppliedDeg * Math.PI) / 180 },
    offSquareRad: (offDeg * Math.PI) / 180,
  };
}

function inAll({ views }: RenderedPair, thing: string): boolean {
  return views.every(({ fixedThings }) => fixedThings.some(({ name }) => name === thing));
}

function referencesOf(draw: Draw, pair: RenderedPair, { band, held }: With): References {
  const onPin = pair.held === 'target on the pin';
  const isTape = pair.held === 'tape';
  const checkMm = 100 * pair.printSize + draw.normal(0, 0.3);
  const diameterMm = pair.bandDiameterMm + draw.normal(0, 0.3);
  const outMm = pair.pinEndMm + draw.normal(0, 1.5);
  return {
    ...NO_REFERENCES,
    tape: held && isTape ? { zeroAtFace: true, unmoved: false, touchesPin: false } : null,
    target: held && !isTape ? { checkMm, uCheckMm: 0.3, unmoved: onPin, touchesPin: onPin } : null,
    clampBand: band ? { diameterMm, uDiameterMm: 0.3 } : null,
    pinEnd: onPin && held ? null : { outMm, uOutMm: 1.5 },
  };
}

/** The file states the focal length as a whole number of millimetres of the 35 mm equivalent. */
export function captureOf(
  { widthPx, heightPx, focalPx }: Pick<RenderedPair, 'widthPx' | 'heightPx' | 'focalPx'>,
  id: string,
): Capture {
  return {
    id,
    kind: 'photo',
    fileName: `${id}.jpg`,
    mediaType: 'image/jpeg',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    widthPx,
    heightPx,
    rotationDeg: 0,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: Math.round((focalPx * Math.hypot(36, 24)) / Math.hypot(widthPx, heightPx)),
    clip: null,
  };
}
