/** The table of the study of outlines. */

export type BandDrawn = {
  readonly name: string;
  readonly tookMs: number;
  readonly reason: string | null;
  readonly found: {
    readonly ratioOff: number;
    readonly uRatio: number;
    readonly centrePx: number;
    /** Of each mark, across the true rim; in pixels, and over what it states. */
    readonly offsPx: readonly number[];
    readonly zs: readonly number[];
  } | null;
};
/** What was aimed at, as an axis ratio. */
const GOAL = 0.01;
/** Marks that lie so far off, rms, lie on another edge. */
const OTHER_EDGE_PX = 2.5;

/** Wrong and confident: farther off than the goal and than four of its own standard deviations. */
export const isWrongBand = ({ ratioOff, uRatio }: NonNullable<BandDrawn['found']>): boolean =>
  Math.abs(ratioOff) > Math.max(GOAL, 4 * uRatio);
export const isOtherEdge = ({ offsPx }: NonNullable<BandDrawn['found']>): boolean =>
  rms(offsPx) > OTHER_EDGE_PX;

export function bandTable(drawn: readonly BandDrawn[]): string {
  const rows = names(drawn).map((name) => {
    const all = drawn.filter((each) => each.name === name);
    const found = all.flatMap((each) => each.found ?? []);
    const offs = found.map(({ ratioOff }) => Math.abs(ratioOff));
    const wrong = found.filter(isWrongBand);
    const other = found.filter(isOtherEdge);
    const cells = [
      all.length,
      percent(found.length, all.length),
      at(offs, 0.5).toFixed(4),
      at(offs, 0.9).toFixed(4),
      Math.max(...offs).toFixed(4),
      percent(offs.filter((off) => off <= GOAL).length, found.length),
      rms(found.map(({ ratioOff, uRatio }) => ratioOff / uRatio)).toFixed(2),
      at(
        found.map(({ centrePx }) => centrePx),
        0.9,
      ).toFixed(1),
      rms(found.flatMap(({ zs }) => zs)).toFixed(2),
      `${other.length} of ${found.length}`,
      percent(wrong.length, all.length),
      reasons(all),
    ];
    return `| ${name} | ${cells.join(' | ')} |`;
  });
  return table(
    [
      'clamp band',
      'asked',
      'found',
      'axis ratio off: median',
      '90 %',
      'largest',
      'within 0.01',
      'z of the ratio, rms',
      'centre off 90 % px',
      'z of the marks, rms',
      'on another edge',
      'wrong and confident',
      'refused because',
    ],
    rows,
  );
}

const names = (drawn: readonly { readonly name: string }[]) => [...new Set(drawn.map(({ name }) => name))];
const percent = (part: number, of: number) => (of === 0 ? '-' : `${((100 * part) / of).toFixed(1)} %`);
const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);

function at(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}

function reasons(all: readonly { readonly reason: string | null }[]): string {
  const given = all.flatMap(({ reason }) => reason ?? []);
  const counted = [...new Set(given)].map((reason) => ({
    reason,
    count: given.filter((each) => each === reason).length,
  }));
  return counted
    .sort((a, b) => b.count - a.count)
    .map(({ reason, count }) => `${reason} ${count}`)
    .join(', ');
}

function table(head: readonly string[], rows: readonly string[]): string {
  return [`| ${head.join(' | ')} |`, `|${' --- |'.repeat(head.length)}`, ...rows].join('\n');
}
