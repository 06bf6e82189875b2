/** Simulated marking: a point of the wheel end becomes a mark on the picture, with the hand's scatter. */
import type { Draw } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { SceneOptions } from './scene-options.ts';
import { type Camera, type CameraPose, imageOf, type P3 } from './sight.ts';

/** What a mark is, without where it is and how well. */
export type What =
  | { readonly kind: Exclude<Mark['kind'], 'tape-graduation' | 'tie-point' | 'target-corner'> }
  | { readonly kind: 'tape-graduation'; readonly readingMm: number }
  | { readonly kind: 'tie-point'; readonly tie: string }
  | { readonly kind: 'target-corner'; readonly marker: number; readonly corner: number };

export type Put = (at: P3, what: What) => void;

/** put draws its scatter from the scene's first stream, putMore and putEdge from those for what was added later. */
export function marker({
  draw,
  extra,
  edge,
  camera,
  pose,
  options,
  nextId,
}: {
  readonly draw: Draw;
  readonly extra: Draw;
  readonly edge: Draw;
  readonly camera: Camera;
  readonly pose: CameraPose;
  readonly options: SceneOptions;
  readonly nextId: () => string;
}): { readonly marks: readonly Mark[]; readonly put: Put; readonly putMore: Put; readonly putEdge: Put } {
  const marks: Mark[] = [];
  const putFrom =
    (stream: Draw): Put =>
    (at, what) => {
      const [u, v] = imageOf(camera, pose, at);
      const foundToPx = foundTo(what, options);
      const sigmaPx = foundToPx ?? options.sigmaPx;
      const noisePx = options.noisePx ?? sigmaPx;
      const xPx = u + stream.normal(0, noisePx);
      const yPx = v + stream.normal(0, noisePx);
      marks.push({
        ...what,
        id: nextId(),
        xPx,
        yPx,
        sigmaPx,
        placedBy: foundToPx === undefined ? 'hand' : 'assist',
      });
    };
  return { marks, put: putFrom(draw), putMore: putFrom(extra), putEdge: putFrom(edge) };
}

/** Undefined for what a hand marks. */
function foundTo(
  { kind }: What,
  { targetSigmaPx = 0.2, tieSigmaPx, edgeSigmaPx }: SceneOptions,
): number | undefined {
  if (kind === 'target-corner') return targetSigmaPx;
  if (kind === 'tape-edge') return edgeSigmaPx;
  return kind === 'tie-point' ? tieSigmaPx : undefined;
}

export function counter(): () => string {
  let next = 0;
  return () => `m${next++}`;
}
