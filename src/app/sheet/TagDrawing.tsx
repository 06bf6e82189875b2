/** The clamp band's bolt, with and without the trapezoid tag under its head. */
export function TagDrawing({ tag }: { readonly tag: boolean }) {
  return (
    <svg className="drawing small" viewBox="0 0 80 50" aria-hidden="true">
      <path d="M6 36H74M6 44H74" />
      <path d="M34 36V12H46V36" />
      <rect x="30" y="6" width="20" height="9" />
      {tag ? <path className="filled" d="M46 18H66L72 34H46Z" /> : null}
    </svg>
  );
}
