/**
 * From the pixels as stored to the upright picture: the turn and the mirroring that an EXIF orientation asks for.
 *
 * Model    upright = turn(mirror(stored)): mirrored left to right first where asked, then turned clockwise
 * Source   Exif 2.32 (CIPA DC-008) 4.6.4, tag Orientation (clause from memory)
 */
export type Upright = { readonly rotationDeg: 0 | 90 | 180 | 270; readonly mirrored: boolean };

export const AS_STORED: Upright = { rotationDeg: 0, mirrored: false };

const BY_ORIENTATION: readonly Upright[] = [
  AS_STORED,
  { rotationDeg: 0, mirrored: true },
  { rotationDeg: 180, mirrored: false },
  { rotationDeg: 180, mirrored: true },
  { rotationDeg: 270, mirrored: true },
  { rotationDeg: 90, mirrored: false },
  { rotationDeg: 90, mirrored: true },
  { rotationDeg: 270, mirrored: false },
];

export type SizePx = { readonly widthPx: number; readonly heightPx: number };

export function uprightOf(orientation: number | null): Upright {
  return BY_ORIENTATION[(orientation ?? 1) - 1] ?? AS_STORED;
}

export function uprightSize({ widthPx, heightPx }: SizePx, { rotationDeg }: Upright): SizePx {
  return rotationDeg % 180 === 0 ? { widthPx, heightPx } : { widthPx: heightPx, heightPx: widthPx };
}

/** a b c d e f of the canvas: x' = a x + c y + e, y' = b x + d y + f; lands whole pixels on whole pixels. */
export function uprightFromStored(
  { widthPx, heightPx }: SizePx,
  { rotationDeg, mirrored }: Upright,
): readonly [a: number, b: number, c: number, d: number, e: number, f: number] {
  const sx = mirrored ? -1 : 1;
  const tx = mirrored ? widthPx : 0;
  switch (rotationDeg) {
    case 0:
      return [sx, 0, 0, 1, tx, 0];
    case 90:
      return [0, sx, -1, 0, heightPx, tx];
    case 180:
      return [-sx, 0, 0, -1, widthPx - tx, heightPx];
    case 270:
      return [0, -sx, 1, 0, 0, widthPx - tx];
  }
}
