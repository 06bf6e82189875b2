/** Runs from different starts that met are one minimum: told by where they put the pins and the pin's depth. */
import type { Layout } from './layout.ts';
import type { Solution } from './run.ts';

const SAME_PLACE_MM = 0.5;

/** sorted: of two that met the first is kept. */
export function distinct<S extends Solution>(sorted: readonly S[], layout: Layout): readonly S[] {
  const places = [...Object.values(layout.pins).flatMap((at) => [at, at + 1]), layout.pinDepth];
  const kept: S[] = [];
  for (const solution of sorted) {
    const met = kept.some((k) =>
      places.every((at) => Math.abs((k.x[at] as number) - (solution.x[at] as number)) < SAME_PLACE_MM),
    );
    if (!met) kept.push(solution);
  }
  return kept;
}
