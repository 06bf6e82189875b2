/** The air port seen from the front: a square boss speaks for long stroke, a round one for standard. */
export function PortDrawing({ square }: { readonly square: boolean }) {
  return (
    <svg className="drawing small" viewBox="0 0 84 52" aria-hidden="true">
      {square ? <path d="M26 8h36v36h-36z" /> : <circle cx="44" cy="26" r="19" />}
      <circle cx="44" cy="26" r="10" />
      <circle cx="44" cy="26" r="7.5" />
      <path d="M44 2v48M20 26h48" className="centre-line" />
    </svg>
  );
}
