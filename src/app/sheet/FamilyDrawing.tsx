import type { ChamberFamily } from '../../finding/chamber.ts';

/** Side views of chambers, drawn plainly: what holds the two halves together is what tells them apart. */
const HOLDING: Readonly<Record<ChamberFamily, readonly string[]>> = {
  // A band of V section round the rim, with its bolt.
  clamp: ['M28 8h8v36h-8z', 'M28 8l4-5h5v5', 'M32 3v-2'],
  // Two bands: a second diaphragm behind the first.
  dd3: ['M20 8h7v36h-7z', 'M37 8h7v36h-7z'],
  // Flange with bolts through it.
  bolt: ['M29 6h6v40h-6z', 'M25 11h14M25 20h14M25 32h14M25 41h14'],
  // Long body, the diaphragm rolls inside it.
  rotochamber: ['M18 12h34v28h-34z', 'M24 12v28'],
  unlisted: ['M28 8h8v36h-8z'],
};

const BODIES: Readonly<Record<ChamberFamily, string>> = {
  clamp: 'M28 12C14 12 10 18 10 26s4 14 18 14M36 12c14 0 18 6 18 14s-4 14-18 14',
  dd3: 'M20 12C12 12 8 18 8 26s4 14 12 14M27 12h10M27 40h10M44 12c10 0 12 6 12 14s-2 14-12 14',
  bolt: 'M29 12C14 12 10 18 10 26s4 14 19 14M35 12c15 0 19 6 19 14s-4 14-19 14',
  rotochamber: 'M18 14C12 14 10 20 10 26s2 12 8 12',
  unlisted: 'M28 12C14 12 10 18 10 26s4 14 18 14M36 12c14 0 18 6 18 14s-4 14-18 14',
};

export function FamilyDrawing({ family }: { readonly family: ChamberFamily }) {
  const dashed = family === 'unlisted' ? '3 3' : undefined;
  return (
    <svg className="drawing small" viewBox="0 0 84 52" aria-hidden="true">
      <path d={BODIES[family]} strokeDasharray={dashed} />
      {HOLDING[family].map((path) => (
        <path key={path} d={path} strokeDasharray={dashed} />
      ))}
      <path d="M54 24h24M54 28h24M78 21v10h4v-10z" />
    </svg>
  );
}
