/** The chamber from the side: the service half alone, or with the spring brake behind it. */
export function SpringDrawing({ spring }: { readonly spring: boolean }) {
  return (
    <svg className="drawing small" viewBox="0 0 80 50" aria-hidden="true">
      <path d="M60 25H78" />
      <path d="M44 8H52Q60 8 60 25Q60 42 52 42H44Z" />
      <path d="M40 6V44H44V6Z" />
      <path d={spring ? 'M40 9H32V41H40' : 'M40 8Q28 10 28 25Q28 40 40 42'} />
      {spring ? (
        <>
          <path d="M28 6V44H32V6Z" />
          <path d="M28 8H14Q6 8 6 25Q6 42 14 42H28" />
          <path className="thin" d="M10 16L24 20L10 25L24 30L10 35" />
        </>
      ) : null}
    </svg>
  );
}
