/** The printed target in a picture. */
import type { Result } from '../basics/result.ts';
import { detectMarkers } from './detect-markers.ts';
import type { Gray } from './gray.ts';
import type { Opencv } from './opencv.ts';
import type { CardMarker, TargetSight } from './target-sight.ts';
import type { VisionFailure } from './vision-failure.ts';
import { withOpencv } from './with-opencv.ts';

export function findTarget(
  cv: Opencv,
  gray: Gray,
  card: readonly CardMarker[],
): Result<TargetSight, VisionFailure> {
  return withOpencv(cv, (keep) => {
    const seen = detectMarkers(cv, keep, gray).filter(({ marker }) =>
      card.some((each) => each.marker === marker),
    );
    return {
      corners: seen.flatMap(({ marker, cornersPx }) =>
        cornersPx.map(([xPx, yPx], corner) => ({
          marker,
          corner: corner as 0 | 1 | 2 | 3,
          xPx,
          yPx,
          sigmaPx: 1,
        })),
      ),
      missing: card
        .map(({ marker }) => marker)
        .filter((marker) => !seen.some((each) => each.marker === marker)),
    };
  });
}
