import { BRAKE_DRAWING, BRAKE_DRAWING_STROKE } from '../words/en.ts';

/** One arm, drawn twice: its pin end and its shaft end joined by their common tangents. */
const RELEASED_ARM = 'M332.9 124.1A20 20 0 0 1 369.7 108.8L434.4 233.3A32 32 0 1 1 375.5 257.7Z';
const APPLIED_ARM = 'M479.1 124.1A20 20 0 0 0 442.3 108.8L377.6 233.3A32 32 0 1 0 436.5 257.7Z';

/** The mechanism as a workshop sketch, drawn by us: chamber, rod, clevis pin and arm, released in full, applied in thin lines. */
export function BrakeDrawing() {
  return (
    <svg className="drawing brake-drawing" viewBox="16 14 568 268" role="img" aria-label={BRAKE_DRAWING}>
      <path d="M20 118h556" className="centre-line" />
      <g className="phantom">
        <path d={APPLIED_ARM} />
        <circle cx="460" cy="118" r="8" />
      </g>
      <g className="outline">
        <path d="M96 50C48 50 34 82 34 118s14 68 62 68M116 50c44 0 56 32 56 68s-12 68-56 68" />
        <path d="M96 38h20v160H96z" />
        <path d="M172 106h8v24h-8z" />
        <path d="M180 113h106v10H180z" />
        <path d="M286 104h26v28h-26z" />
        <path d={RELEASED_ARM} className="filled" />
        <path d="M312 108h40v20h-40z" className="filled" />
        <circle cx="352" cy="118" r="8" className="filled" />
        <circle cx="406" cy="248" r="15" className="filled" />
        <path d="M391 248h30M406 233v30" className="thin" />
      </g>
      <g className="dimension-drawn">
        <path d="M352 104V20M460 104V20M352 32h26M434 32h26" />
        <path d="M352 32l15-2.5v5zM460 32l-15-2.5v5z" className="arrow" />
        <text x="406" y="38" textAnchor="middle">
          {BRAKE_DRAWING_STROKE}
        </text>
      </g>
    </svg>
  );
}
