/** The newest value, for listeners that are set up once. */
import { type RefObject, useLayoutEffect, useRef } from 'react';

export function useLatest<T>(value: T): RefObject<T> {
  const latest = useRef(value);
  useLayoutEffect(() => {
    latest.current = value;
  });
  return latest;
}
