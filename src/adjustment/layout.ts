/** Which unknown stands where in the vector of unknowns: only what the problem needs has a place. */
import type { BrakeState } from '../marks/view.ts';
import { CAMERA_UNKNOWNS } from './camera.ts';
import { POSE_UNKNOWNS } from './pose.ts';
import type { Problem } from './problem.ts';
import { TAPE_EDGE_UNKNOWNS } from './tape-edge.ts';
import { TAPE_UNKNOWNS } from './tape-point.ts';

/** Places, each the index of the first of its unknowns. */
export type Layout = {
  readonly size: number;
  /** ln f, cx, cy, k1, k2 of each camera. */
  readonly cameras: readonly number[];
  /** Rotation vector and translation of each pose. */
  readonly poses: readonly number[];
  /** x, y of the pin in each state. */
  readonly pins: Readonly<Partial<Record<BrakeState, number>>>;
  readonly pinDepth: number;
  readonly faceDepth: number;
  /** Inner end of the rod behind the face, released. */
  readonly rodInner: number;
  /** x, y, depth of the camshaft end's centre, and arm length; absent where no camshaft end is marked. */
  readonly camshaft: number | null;
  /** How the tape's print is off, common to all views. */
  readonly tapeSlack: number | null;
  /** x, y, depth of the tape's zero, two tilts, two bows (tape-point.ts); by view, one place for all views of an unmoved tape. */
  readonly tapes: readonly (number | null)[];
  /** Offset, turn and bow of the blade's edge against the line of the graduations (tape-edge.ts); by view, where its edge is
   * marked, one place for all views of an unmoved tape. */
  readonly tapeEdges: readonly (number | null)[];
  /** Scale of the print, common to all views of the target. */
  readonly targetScale: number | null;
  /** Across, aside and depth of the target's origin, its direction and two tilts (target-points.ts); by view, one place for all
   * views of an unmoved target. */
  readonly targets: readonly (number | null)[];
  /** Rim's place along the axis, diameter. */
  readonly band: number | null;
  /** The known distance itself. */
  readonly distance: number | null;
  /** x, y, depth of its start, direction in the plane, tilt out of it; by view. */
  readonly distances: readonly (number | null)[];
  /** Nuisance of one mark: angle round the band, distance from the pin back along the rod, or from the tape's zero along its edge. */
  readonly nuisance: ReadonlyMap<string, number>;
  /** x, y, depth of each tie point that more than one view shows, by its name. */
  readonly ties: ReadonlyMap<string, number>;
  /** x, y from a thing to the spot that was followed in its place, by the mark it was followed from (problem.ts). */
  readonly offsets: ReadonlyMap<string, number>;
};

export function layoutOf(problem: Problem): Layout {
  let size = 0;
  const take = (count: number): number => {
    const at = size;
    size += count;
    return at;
  };
  const { views, references } = problem;
  const shows = (kind: string) => (view: Problem['views'][number]) => view.marks.some((m) => m.kind === kind);
  const cameras = problem.cameras.map(() => take(CAMERA_UNKNOWNS));
  const poses = Array.from({ length: problem.poseCount }, () => take(POSE_UNKNOWNS));
  const pins = Object.fromEntries([...new Set(views.map((v) => v.state))].map((state) => [state, take(2)]));
  const [pinDepth, faceDepth, rodInner] = [take(1), take(1), take(1)];
  const camshaft = views.some(shows('camshaft-end')) ? take(4) : null;
  const tapeSlack = references.tape ? take(1) : null;
  const oneHold =
    references.tape?.unmoved && views.some(shows('tape-graduation')) ? take(TAPE_UNKNOWNS) : null;
  const tapes = views.map((v) =>
    references.tape && shows('tape-graduation')(v) ? (oneHold ?? take(TAPE_UNKNOWNS)) : null,
  );
  const showsEdge = (v: Problem['views'][number], i: number) => tapes[i] !== null && shows('tape-edge')(v);
  const oneEdge = oneHold !== null && views.some(showsEdge) ? take(TAPE_EDGE_UNKNOWNS) : null;
  const tapeEdges = views.map((v, i) => (showsEdge(v, i) ? (oneEdge ?? take(TAPE_EDGE_UNKNOWNS)) : null));
  const targetScale = references.target ? take(1) : null;
  const oneCard = references.target?.unmoved && views.some(shows('target-corner')) ? take(6) : null;
  const targets = views.map((v) =>
    references.target && shows('target-corner')(v) ? (oneCard ?? take(6)) : null,
  );
  const band = references.clampBand ? take(2) : null;
  const distance = references.distance ? take(1) : null;
  const distances = views.map((v) => (references.distance && shows('distance-end')(v) ? take(5) : null));
  const nuisance = new Map<string, number>();
  for (const [i, { marks }] of views.entries())
    for (const { id, kind } of marks) {
      const isOnEdge = kind === 'tape-edge' && tapeEdges[i] !== null;
      const needed = kind === 'rod-line' || isOnEdge || (kind === 'clamp-band' && band !== null);
      if (needed) nuisance.set(id, take(1));
    }
  const ties = new Map(tiesSeenTwice(views).map((tie) => [tie, take(3)]));
  const followed = new Set(views.flatMap(({ marks }) => marks.flatMap((mark) => mark.followedFrom ?? [])));
  const offsets = new Map([...followed].map((seed) => [seed, take(2)]));
  return {
    size,
    cameras,
    poses,
    pins,
    pinDepth,
    faceDepth,
    rodInner,
    camshaft,
    tapeSlack,
    tapes,
    tapeEdges,
    targetScale,
    targets,
    band,
    distance,
    distances,
    nuisance,
    ties,
    offsets,
  };
}

function tiesSeenTwice(views: Problem['views']): readonly string[] {
  const seen = new Map<string, number>();
  for (const { marks } of views)
    for (const tie of new Set(marks.flatMap((mark) => (mark.kind === 'tie-point' ? [mark.tie] : []))))
      seen.set(tie, (seen.get(tie) ?? 0) + 1);
  return [...seen].flatMap(([tie, count]) => (count > 1 ? [tie] : []));
}
