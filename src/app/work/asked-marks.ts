/** Which marks a view is asked for: the mechanism always, what each chosen reference needs, last what can be left out. */
import type { MarkKind } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import { BAND_UNKNOWN } from './usual-references.ts';

/** Kinds that a hand places; a printed target's corners are found. */
export type HandKind = Exclude<MarkKind, 'target-corner'>;

export type AskedMark = {
  readonly kind: HandKind;
  readonly need: number;
  readonly have: number;
  /** Not needed for the stroke; it adds the arm angle or narrows the uncertainty. */
  readonly optional: boolean;
  /** Placed when it is picked from the list, never asked for in turn. */
  readonly onRequest: boolean;
};

/** Two readings fix a scale but no tilt; the third shows the tilt and the fourth a slip of the hand. */
const GRADUATIONS = 4;
/** A circle seen at an angle is an ellipse with five unknowns: the sixth point is the first that can contradict. */
const RIM_POINTS = 6;

/** Two give a line, the third shows a bend; three more for what a hand misses. */
const EDGE_POINTS = 6;

/** Five tie the pictures together in every direction. */
const TIE_POINTS = 5;

export function askedMarks(
  view: View,
  { references, cameraStill }: Pick<MeasurementInput, 'references' | 'cameraStill'>,
): readonly AskedMark[] {
  const have = (kind: MarkKind) => view.marks.filter((mark) => mark.kind === kind).length;
  const asked = (kind: HandKind, need: number, optional = false): AskedMark => ({
    kind,
    need,
    have: have(kind),
    optional,
    onRequest: kind === 'tie-point' || kind === 'tape-edge',
  });
  return [
    asked('chamber-face', 1),
    asked('clevis-pin', 1),
    ...(references.armLength ? [asked('camshaft-end', 1)] : []),
    ...(references.tape ? [asked('tape-graduation', GRADUATIONS)] : []),
    ...(references.clampBand
      ? [asked('clamp-band', RIM_POINTS, references.clampBand.uDiameterMm === BAND_UNKNOWN.uDiameterMm)]
      : []),
    ...(references.distance ? [asked('distance-end', 2)] : []),
    ...(references.armLength ? [] : [asked('camshaft-end', 1, true)]),
    asked('rod-line', 2, true),
    ...(references.tape ? [asked('tape-edge', EDGE_POINTS, true)] : []),
    ...(cameraStill ? [] : [asked('tie-point', TIE_POINTS, true)]),
  ];
}

export function missingOf({ need, have, optional }: AskedMark): number {
  return optional ? 0 : Math.max(0, need - have);
}

/** The mark to ask for now: the first not yet there that the person has not passed over. */
export function nextAsked(asked: readonly AskedMark[], passedOver: readonly MarkKind[]): HandKind | null {
  const next = asked.find(
    ({ kind, need, have, onRequest }) => have < need && !onRequest && !passedOver.includes(kind),
  );
  return next?.kind ?? null;
}

/** Kinds of which a view has one, unless it is set once more on purpose: marking again moves it. */
export function isSingle(kind: MarkKind): kind is 'chamber-face' | 'clevis-pin' | 'camshaft-end' {
  return kind === 'chamber-face' || kind === 'clevis-pin' || kind === 'camshaft-end';
}
