/** A picture made smaller by a whole number, to be no longer than mostPx. Coarse things are looked for in it. */
import { binned } from './binned.ts';
import type { Gray } from './gray.ts';

export type Shrunk = { readonly gray: Gray; readonly by: number };

export function shrunk(gray: Gray, mostPx: number): Shrunk {
  const by = Math.max(1, Math.ceil(Math.max(gray.widthPx, gray.heightPx) / mostPx));
  return { gray: binned(gray, by), by };
}
