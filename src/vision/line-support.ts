/**
 * How many steps of brightness lie on a line, counted by how steep they are.
 *
 * Model    sum of min(rise, MOST) over the steps within NEAR_PX of t = at + slope s. Steps come column by column (one s each, evenly
 *          spaced). First what each column could give at most, by the whole pixel in which the line crosses it: most lines are given up
 *          by that; the others are counted.
 * Assumes  lines that cross every column no farther out than the columns' own room
 */
export type Step = { readonly s: number; readonly t: number; readonly rise: number };

export const NEAR_PX = 1;
/** A steeper one says no more. */
const MOST_RISE = 40;
/** Places across in whole steps of so many to a pixel: a line is off by less than the slack, however many columns it crosses. */
const UNIT_BITS = 16;
const SLACK_PX = 0.01;

/** firstPx, apartPx: s of the first column, and from one to the next. roomPx: no step and no line is farther off t = 0, whole pixels. */
export type Columns = {
  readonly steps: readonly (readonly Step[])[];
  readonly firstPx: number;
  readonly apartPx: number;
  readonly roomPx: number;
};

/** along, across, rises: of each step, column by column. */
export type Support = {
  readonly along: Float64Array;
  readonly across: Float64Array;
  readonly rises: Float64Array;
  readonly columns: Columns;
  readonly bins: number;
  /** As mostAt gives. */
  readonly most: Uint16Array;
  /** What the second half of the columns could give at most. */
  readonly later: number;
};

export function supportIn(columns: Columns): Support {
  const { steps, roomPx } = columns;
  let count = 0;
  for (const own of steps) count += own.length;
  const along = new Float64Array(count);
  const across = new Float64Array(count);
  const rises = new Float64Array(count);
  let i = 0;
  for (const own of steps)
    for (const { s, t, rise } of own) {
      along[i] = s;
      across[i] = t;
      rises[i] = Math.min(rise, MOST_RISE);
      i++;
    }
  const bins = 2 * roomPx + 1;
  const most = mostAt(columns, bins);
  let later = 0;
  for (let column = steps.length >> 1; column < steps.length; column++) {
    let best = 0;
    for (let at = column * bins; at < (column + 1) * bins; at++) best = Math.max(best, most[at] as number);
    later += best;
  }
  return { along, across, rises, columns, bins, most, later };
}

/** Of a line; null where that cannot come to `least`. */
export function supportOf(support: Support, at: number, slope: number, least: number): number | null {
  const { along, across, rises, columns, bins, most, later } = support;
  const { firstPx, apartPx, roomPx } = columns;
  const count = columns.steps.length;
  const half = count >> 1;
  let place = Math.round((at + slope * firstPx + roomPx) * 2 ** UNIT_BITS);
  const step = Math.round(slope * apartPx * 2 ** UNIT_BITS);
  let row = 0;
  let bound = 0;
  for (let column = 0; column < half; column++, row += bins, place += step)
    bound += most[row + (place >> UNIT_BITS)] as number;
  if (bound + later < least) return null;
  for (let column = half; column < count; column++, row += bins, place += step)
    bound += most[row + (place >> UNIT_BITS)] as number;
  if (bound < least) return null;
  let sum = 0;
  for (let i = 0; i < along.length; i++)
    if (Math.abs((across[i] as number) - at - slope * (along[i] as number)) < NEAR_PX)
      sum += rises[i] as number;
  return sum;
}

/** Of each column, where a line crosses it within a pixel: whole levels, rounded up. */
function mostAt({ steps, roomPx }: Columns, bins: number): Uint16Array {
  const most = new Uint16Array(steps.length * bins);
  for (const [column, own] of steps.entries())
    for (const { t, rise } of own) {
      const first = Math.max(0, Math.ceil(t - 1 - NEAR_PX - SLACK_PX) + roomPx);
      const last = Math.min(bins - 1, Math.floor(t + NEAR_PX + SLACK_PX) + roomPx);
      for (let bin = first; bin <= last; bin++) {
        const at = column * bins + bin;
        most[at] = (most[at] as number) + Math.ceil(Math.min(rise, MOST_RISE));
      }
    }
  return most;
}
