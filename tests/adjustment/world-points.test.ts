import { expect, test } from 'vitest';
import { type Layout, layoutOf } from '../../src/adjustment/layout.ts';
import { besideBy, distancePoint, worldPoint } from '../../src/adjustment/world-points.ts';
import type { Vec3 } from '../../src/basics/rotation.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';

const placed = { xPx: 0, yPx: 0, sigmaPx: 1, placedBy: 'hand' } as const;

const MARKS: readonly Mark[] = [
  { kind: 'chamber-face', id: 'face', ...placed },
  { kind: 'clevis-pin', id: 'pin', ...placed },
  { kind: 'camshaft-end', id: 'camshaft', ...placed },
  { kind: 'rod-line', id: 'rod', ...placed },
  { kind: 'clamp-band', id: 'rim', ...placed },
  { kind: 'tape-graduation', id: 'inch', readingMm: 100, ...placed },
  { kind: 'tape-edge', id: 'edge', ...placed },
  { kind: 'distance-end', id: 'begin', ...placed },
  { kind: 'distance-end', id: 'end', ...placed },
];

const REFERENCES: References = {
  ...NO_REFERENCES,
  tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
  clampBand: { diameterMm: 200, uDiameterMm: 1 },
  distance: { distanceMm: 150, uDistanceMm: 0.5 },
};

const VIEW = { state: 'applied', index: 1 } as const;

/** Round numbers, so that every place below can be worked by hand. */
function wheelEnd(references = REFERENCES): { readonly layout: Layout; readonly x: Float64Array } {
  const layout = layoutOf({
    cameras: [
      {
        focalPx: 1500,
        uLnFocal: 0.035,
        cxPx: 960,
        cyPx: 540,
        uCxPx: 19,
        uCyPx: 19,
        k1: 0,
        uK1: 0.015,
        k2: 0,
        uK2: 0.01,
      },
    ],
    poseCount: 1,
    places: 'own',
    views: [
      {
        state: 'released',
        camera: 0,
        pose: 0,
        marks: MARKS.map((m) => ({ ...m, id: `${m.id} released` })),
        isSide: false,
      },
      { state: 'applied', camera: 0, pose: 0, marks: MARKS, isSide: false },
    ],
    references,
    hand: 1,
  });
  const x = new Float64Array(layout.size);
  x.set([100, 0], layout.pins.released);
  x.set([160, 20], layout.pins.applied);
  x[layout.pinDepth] = -22;
  x[layout.faceDepth] = -6;
  x[layout.rodInner] = 100;
  x.set([140, 150, -28, 146], layout.camshaft as number);
  x[layout.nuisance.get('rod') as number] = 50;
  if (layout.band !== null) {
    x.set([-55, 200], layout.band);
    x[layout.nuisance.get('rim') as number] = Math.PI / 6;
  }
  if (layout.tapeSlack !== null) {
    x[layout.tapeSlack] = 0.5;
    x.set([1, -20, -15, Math.PI / 6, Math.PI / 3, 3, 1.5], layout.tapes[1] as number);
    x.set([-12, 0.01, 0.5], layout.tapeEdges[1] as number);
    x[layout.nuisance.get('edge') as number] = 250;
  }
  if (layout.distance !== null) {
    x[layout.distance] = 150;
    x.set([10, -40, -10, Math.PI / 2, Math.PI / 6], layout.distances[1] as number);
  }
  return { layout, x };
}

function placeOf(id: string, hand: 1 | -1): readonly number[] | undefined {
  const { layout, x } = wheelEnd();
  const mark = MARKS.find((m) => m.id === id) as Mark;
  return worldPoint(mark, VIEW, x, layout, hand)?.at;
}

function near(place: readonly number[] | undefined, expected: Vec3): void {
  expected.forEach((value, i) => {
    expect(place?.[i]).toBeCloseTo(value, 12);
  });
}

// Worked by hand. The rod is 100 + 100 mm long; applied, its pin is 20 mm aside: it falls to the axis by 0.1 mm each mm.
test.each([1, -1] as const)('places of the marked things, hand %i', (hand) => {
  near(placeOf('pin', hand), [160, 20, -22 * hand]);
  near(placeOf('face', hand), [0, 20 - 160 * 0.1, -6 * hand]);
  near(placeOf('rod', hand), [110, 20 - 50 * 0.1, 0]);
  near(placeOf('camshaft', hand), [140, 150, -28 * hand]);
  near(placeOf('rim', hand), [-55, 100 * Math.cos(Math.PI / 6), 50]);
  // 100 mm of tape are 150 mm by its print, the middle of the chord: all of both bows. Tilted out by 60 degrees half of it lies in
  // the plane, at 30 degrees; the row of marks is 1.5 mm aside of it.
  near(placeOf('inch', hand), [
    1 + 75 * Math.cos(Math.PI / 6) - 1.5 / 2,
    -20 + 75 / 2 + 1.5 * Math.cos(Math.PI / 6),
    hand * (-15 + 150 * Math.sin(Math.PI / 3) + 3),
  ]);
  // Its edge 250 mm along, 100 mm from the middle: -12 + 2.5 + 0.5 mm beside the graduations, at right angles in the plane; 4 times
  // 5/6 times 1/6 of the blade's bow.
  near(placeOf('edge', hand), [
    1 + 125 * Math.cos(Math.PI / 6) + 9 / 2,
    -20 + 125 / 2 - 9 * Math.cos(Math.PI / 6),
    hand * (-15 + 250 * Math.sin(Math.PI / 3) + (3 * 20) / 36),
  ]);
});

test.each([1, -1] as const)('both ends of the known distance, hand %i', (hand) => {
  const { layout, x } = wheelEnd();
  const end = (which: 0 | 1) => distancePoint(which, layout.distances[1], x, layout, hand)?.at;
  near(end(0), [10, -40, -10 * hand]);
  // Straight across the axis, 30 degrees out of the plane: 150 cos 30 across, 75 away.
  near(end(1), [10, -40 + 150 * Math.cos(Math.PI / 6), hand * 65]);
});

test('there is room for the fullest point: on the edge of the tape, followed beside', () => {
  const { layout, x } = wheelEnd();
  const edge = MARKS.find((m) => m.id === 'edge') as Mark;
  const point = worldPoint(edge, VIEW, x, layout, 1);
  if (!point) throw new Error('the edge has a place');
  besideBy(point, layout.pins.released as number, x);
  expect(point.unknowns).toBeLessThanOrEqual(point.indexes.length);
  expect(point.unknowns).toBe(12);
});

test('marks of a reference that is not given have no place', () => {
  const { layout, x } = wheelEnd(NO_REFERENCES);
  for (const id of ['rim', 'inch', 'edge', 'begin']) {
    const mark = MARKS.find((m) => m.id === id) as Mark;
    expect(worldPoint(mark, VIEW, x, layout, 1)).toBeNull();
  }
  expect(distancePoint(1, layout.distances[1], x, layout, 1)).toBeNull();
});
