/** Width of a drawn text, measured once: asking again every frame would make the browser lay out every frame. */
const known = new WeakMap<SVGTextElement, { readonly text: string; readonly widthCss: number }>();

export function textWidthCss(element: SVGTextElement): number {
  const text = element.textContent;
  const before = known.get(element);
  if (before?.text === text) return before.widthCss;
  const widthCss = element.getComputedTextLength();
  // Until the typeface is there the width is another one's.
  if (document.fonts.status === 'loaded') known.set(element, { text, widthCss });
  return widthCss;
}
