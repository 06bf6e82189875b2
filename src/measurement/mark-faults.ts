/** Why a set of views cannot be measured: pictures or marks missing, or marks on one point. */
import type { Mark, MarkKind } from '../marks/mark.ts';
import type { BrakeState, View } from '../marks/view.ts';
import type { MeasurementFailure } from './measurement.ts';

const NEEDED: readonly MarkKind[] = ['chamber-face', 'clevis-pin'];
const APART: readonly MarkKind[] = ['chamber-face', 'clevis-pin', 'camshaft-end'];

/** Two marks nearer than this many of their joint standard uncertainties are taken for one point. */
const COINCIDENT_SIGMAS = 5;

export function markFault(views: readonly View[]): MeasurementFailure | null {
  for (const state of ['released', 'applied'] as const) {
    if (!views.some((view) => view.state === state)) return { code: 'measurement/view-missing', state };
  }
  const same = samePicture(views);
  if (same) return { code: 'measurement/same-picture', states: same };
  for (const view of views) {
    for (const kind of NEEDED) {
      if (!view.marks.some((mark) => mark.kind === kind))
        return { code: 'measurement/mark-missing', state: view.state, kind };
    }
    const pair = coincidentPair(view.marks);
    if (pair) return { code: 'measurement/points-coincide', state: view.state, kinds: pair };
  }
  return null;
}

function samePicture(views: readonly View[]): readonly [BrakeState, BrakeState] | null {
  for (const [i, a] of views.entries()) {
    const b = views
      .slice(i + 1)
      .find((v) => v.captureId === a.captureId && v.frame?.timeTicks === a.frame?.timeTicks);
    if (b) return [a.state, b.state];
  }
  return null;
}

function coincidentPair(marks: readonly Mark[]): readonly [MarkKind, MarkKind] | null {
  const apart = APART.flatMap((kind) => marks.find((mark) => mark.kind === kind) ?? []);
  for (const [i, a] of apart.entries()) {
    const b = apart.slice(i + 1).find((other) => coincide(a, other));
    if (b) return [a.kind, b.kind];
  }
  for (const kind of ['tape-graduation', 'distance-end', 'clamp-band', 'target-corner'] as const) {
    const ofKind = marks.filter((mark) => mark.kind === kind);
    const first = ofKind[0];
    if (first && ofKind.length > 1 && ofKind.every((mark) => coincide(first, mark))) return [kind, kind];
  }
  return null;
}

function coincide(a: Mark, b: Mark): boolean {
  const distancePx = Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
  return distancePx < COINCIDENT_SIGMAS * Math.hypot(a.sigmaPx, b.sigmaPx);
}
