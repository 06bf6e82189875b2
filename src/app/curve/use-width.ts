import { type RefObject, useLayoutEffect, useState } from 'react';

/** Of an element, in whole pixels; 0 before it is laid out. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [widthCss, setWidthCss] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (!watched) return;
    const measure = () => setWidthCss(Math.floor(watched.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return widthCss;
}
