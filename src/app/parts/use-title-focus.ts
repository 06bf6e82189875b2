import { type RefObject, useEffect, useRef } from 'react';

/** A screen that has just opened is read from its head. */
export function useTitleFocus(): RefObject<HTMLHeadingElement | null> {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    title.current?.focus();
    scrollTo(0, 0);
  }, []);
  return title;
}
