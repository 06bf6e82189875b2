/** What may be asked of a simulated scene. */
import type { BrakeState } from '../../src/marks/view.ts';

export type ReferenceKind =
  | 'tape'
  | 'clamp-band'
  | 'arm-length'
  | 'distance'
  | 'tape+arm'
  | 'tape+band'
  | 'tape+arm+band'
  | 'tape+distance'
  | 'band+arm'
  | 'distance+arm'
  | 'distance+band'
  | 'target'
  | 'target+band'
  | 'target+arm'
  | 'target+distance'
  | 'tape+target';

export type SceneOptions = {
  readonly seed: number;
  readonly reference: ReferenceKind;
  readonly sigmaPx: number;
  /** Greatest angle off square, each of yaw and pitch. */
  readonly offSquareDeg?: number;
  readonly distanceMm?: readonly [number, number];
  readonly cameraStill?: boolean;
  readonly camshaft?: boolean;
  readonly rodMarks?: boolean;
  readonly strokeMm?: number;
  readonly focalKnown?: boolean;
  readonly widthPx?: number;
  readonly heightPx?: number;
  /** Focal length over the longer side of the picture. */
  readonly focalOverWidth?: readonly [number, number];
  readonly anyRoll?: boolean;
  /** Lens distortion drawn with the engine's own prior width, or none. */
  readonly distortion?: boolean;
  /** Scatter of the marks, where it is not the stated sigmaPx. */
  readonly noisePx?: number;
  /** Lens, depths, arm, references and how they are held just as the engine expects them, without scatter. */
  readonly typical?: boolean;
  /** Which side the camshaft lies: +1 clockwise of the rod's outward direction in the picture. */
  readonly hand?: 1 | -1;
  /** Adds a view pulled by hand to this travel. */
  readonly freeStrokeMm?: number;
  /** The tape lies in the same place in every picture. */
  readonly tapeUnmoved?: boolean;
  /** Arm length and outside diameter of the clamp band, where they are not to be drawn. */
  readonly armMm?: number;
  readonly bandMm?: number;
  /** Fixed things round the brake, marked in every picture. */
  readonly tiePoints?: number;
  /** They are found in the pictures to this, whatever sigmaPx is. */
  readonly tieSigmaPx?: number;
  /** Tape and printed target lie on the end of the clevis pin. */
  readonly touchesPin?: boolean;
  /** The printed target lies in the same place in every picture. */
  readonly targetUnmoved?: boolean;
  /** Corners of the printed target are found in the picture to this, whatever sigmaPx is. */
  readonly targetSigmaPx?: number;
  /** Somebody measured how far the pin's end stands out. */
  readonly pinEndKnown?: boolean;
  /** Face and pin are each marked so many times in every picture. */
  readonly pinRepeats?: number;
  /** What is marked for the face is another edge of the chamber, so far out along the rod. */
  readonly faceMarkedMm?: Partial<Record<BrakeState, number>>;
  /** Marks on the rim of the clamp band. */
  readonly rimPoints?: number;
  readonly graduationStepMm?: number;
  /** Only these graduations are marked. */
  readonly readingsMm?: readonly number[];
  /** How well the band's diameter is known: table, or caliper. */
  readonly uBandMm?: number;
  /** Points marked along the edge of the tape's blade, and to what. */
  readonly edgePoints?: number;
  readonly edgeSigmaPx?: number;
  /** Standard deviation of the lens's k1, where it is not the usual one. */
  readonly k1Scatter?: number;
  /** Where the brake is beside the middle of the picture, x and y over its distance. */
  readonly aside?: readonly [number, number];
  /** A calibrated camera with its profile. */
  readonly profile?: boolean;
};
