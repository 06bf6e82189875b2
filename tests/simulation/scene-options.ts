/** What may be asked of a simulated scene. */
export type ReferenceKind =
  | 'tape'
  | 'clamp-band'
  | 'arm-length'
  | 'distance'
  | 'tape+arm'
  | 'tape+band'
  | 'tape+distance'
  | 'band+arm'
  | 'distance+arm'
  | 'distance+band';

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
};
