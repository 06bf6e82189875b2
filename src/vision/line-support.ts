/**
 * How many steps of brightness lie on a line, counted by how steep they are.
 *
 * Model    sum of min(rise, MOST) over the steps within NEAR_PX of t = at + slope s. Steps come column by column (one s each), by rising t
 *          within a column. First what each column could give at most where the line crosses it, in whole pixels: most lines are given
 *          up by that; the others are counted.
 */
export type Step = { readonly s: number; readonly t: number; readonly rise: number };

export const NEAR_PX = 1;
/** A steeper one says no more. */
const MOST_RISE = 40;

/** The support of a line; null of one that cannot come to `least`. */
export type Support = (at: number, slope: number, least: number) => number | null;

type Columns = {
  readonly along: Float64Array;
  /** Of all steps, one column after the other; ends: of each column. */
  readonly ts: Float64Array;
  readonly rises: Float64Array;
  readonly ends: Int32Array;
};

/** columns: the steps at one s each. halfPx: none is farther off the marked line, in whole pixels. */
export function supportBy(columns: readonly (readonly Step[])[], halfPx: number): Support {
  const held = columns.filter((steps) => steps.length > 0);
  const all = held.flat();
  let end = 0;
  const steps: Columns = {
    along: Float64Array.from(held, ([step]) => (step as Step).s),
    ts: Float64Array.from(all, ({ t }) => t),
    rises: Float64Array.from(all, ({ rise }) => Math.min(rise, MOST_RISE)),
    ends: Int32Array.from(held, ({ length }) => (end += length)),
  };
  const bins = 2 * halfPx + 1;
  const most = mostAt(steps, halfPx, bins);
  const { along } = steps;
  const half = along.length >> 1;
  let later = 0;
  for (let column = half; column < along.length; column++)
    later += Math.max(...most.subarray(column * bins, (column + 1) * bins));
  return (at, slope, least) => {
    let bound = later;
    for (let column = 0, row = halfPx; column < along.length; column++, row += bins) {
      if (column === half) {
        if (bound < least) return null;
        bound -= later;
      }
      const bin = Math.floor(at + slope * (along[column] as number));
      if (bin >= -halfPx && bin <= halfPx) bound += most[row + bin] as number;
    }
    return bound < least ? null : supportOf(steps, at, slope);
  };
}

/** Of each column, where a line crosses it within a pixel: whole levels, rounded up. */
function mostAt({ ts, rises, ends }: Columns, halfPx: number, bins: number): Uint16Array {
  const most = new Uint16Array(ends.length * bins);
  for (let column = 0, i = 0; column < ends.length; column++)
    for (; i < (ends[column] as number); i++) {
      const own = Math.floor(ts[i] as number);
      // Crossed in [bin, bin + 1), a line has it near from one pixel before to one after.
      for (let bin = Math.max(-halfPx, own - 1); bin <= Math.min(halfPx, own + 1); bin++) {
        const at = column * bins + halfPx + bin;
        most[at] = (most[at] as number) + Math.ceil(rises[i] as number);
      }
    }
  return most;
}

function supportOf({ along, ts, rises, ends }: Columns, at: number, slope: number): number {
  let sum = 0;
  for (let column = 0, i = 0; column < along.length; column++) {
    const lean = slope * (along[column] as number);
    for (; i < (ends[column] as number); i++)
      if (Math.abs((ts[i] as number) - at - lean) < NEAR_PX) sum += rises[i] as number;
  }
  return sum;
}
