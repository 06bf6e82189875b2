import { useEffect, useRef } from 'react';
import type { BoardSighting } from './camera-store.ts';

/** The photo, small, with a ring at each corner that was found. */
export function SmallPicture({ sighting }: { readonly sighting: BoardSighting }) {
  const { widthPx, heightPx, corners, small } = sighting;
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => canvas.current?.getContext('2d')?.drawImage(small, 0, 0), [small]);
  const radius = Math.max(widthPx, heightPx) / 130;
  return (
    <div className="small-picture">
      <canvas ref={canvas} width={small.width} height={small.height} />
      <svg viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
        {corners.map(({ corner, xPx, yPx }) => (
          <g key={corner}>
            <circle className="ring-edge" cx={xPx} cy={yPx} r={radius} />
            <circle className="ring" cx={xPx} cy={yPx} r={radius} />
          </g>
        ))}
      </svg>
    </div>
  );
}
