/** The tables of the study of found marks. */

/** errors: x and y, px; null where it was refused. */
export type Drawn = {
  readonly kind: string;
  readonly handPx: number;
  readonly errors: readonly [number, number] | null;
  readonly sigmaPx: number;
};
export type TapeDrawn = {
  readonly way: string;
  readonly handPx: number;
  /** Across their strokes; null where it was refused. */
  readonly marks: readonly { readonly offPx: number; readonly sigmaPx: number }[] | null;
  readonly scaleOff: number | null;
};

/** Wrong and confident: farther off than four of its own standard deviations and than a pixel. */
export const isWrong = (offPx: number, sigmaPx: number) => offPx > 1 && offPx > 4 * sigmaPx;

export function endTable(drawn: readonly Drawn[]): string {
  const rows = groups(drawn, ({ kind, handPx }) => `${kind} | ${handPx}`).map(([name, all]) => {
    const found = all.flatMap(({ errors, sigmaPx }) => (errors ? [{ errors, sigmaPx }] : []));
    const cells = foundCells(found, all.length, percent);
    return `| ${name} | ${all.length} | ${cells.join(' | ')} |`;
  });
  return table(['kind', 'hand px', 'asked', ...FOUND_HEADS], rows);
}

export const FOUND_HEADS = [
  'found',
  'error median px',
  'error 90 % px',
  'z rms',
  'within 2 sigma',
  'wrong and confident',
];

/** What FOUND_HEADS name, of those found among so many asked. */
export function foundCells(
  found: readonly { readonly errors: readonly [number, number]; readonly sigmaPx: number }[],
  asked: number,
  share: (count: number, of: number) => string,
): readonly string[] {
  const offs = found.map(({ errors }) => Math.hypot(...errors));
  const zs = found.flatMap(({ errors, sigmaPx }) => errors.map((error) => error / sigmaPx));
  const wrong = found.filter(({ errors, sigmaPx }) => isWrong(Math.hypot(...errors), sigmaPx)).length;
  return [
    percent(found.length, asked),
    px(at(offs, 0.5)),
    px(at(offs, 0.9)),
    px(rms(zs)),
    percent(within(zs), zs.length),
    share(wrong, asked),
  ];
}

export function tapeTable(drawn: readonly TapeDrawn[]): string {
  const rows = groups(drawn, ({ way, handPx }) => `${way} | ${handPx}`).map(([name, all]) => {
    const found = all.flatMap(({ marks, scaleOff }) => (marks ? [{ marks, scaleOff }] : []));
    const marks = found.flatMap((each) => each.marks);
    const offs = marks.map(({ offPx }) => Math.abs(offPx));
    const zs = marks.map(({ offPx, sigmaPx }) => offPx / sigmaPx);
    const wrong = found.filter((each) =>
      each.marks.some(({ offPx, sigmaPx }) => isWrong(Math.abs(offPx), sigmaPx)),
    ).length;
    const scales = found.flatMap(({ scaleOff }) => (scaleOff === null ? [] : [Math.abs(scaleOff)]));
    const mean = found.length === 0 ? '-' : (marks.length / found.length).toFixed(0);
    const cells = [
      percent(found.length, all.length),
      mean,
      px(at(offs, 0.5)),
      px(at(offs, 0.9)),
      scales.length === 0 ? '-' : `${(100 * at(scales, 0.9)).toFixed(3)} %`,
      px(rms(zs)),
      percent(within(zs), zs.length),
      percent(wrong, all.length),
    ];
    return `| ${name} | ${all.length} | ${cells.join(' | ')} |`;
  });
  return table(
    [
      'tape',
      'hand px',
      'asked',
      'found',
      'marks each',
      'off median px',
      'off 90 % px',
      'scale off 90 %',
      'z rms',
      'within 2 sigma',
      'wrong and confident',
    ],
    rows,
  );
}

export function groups<T>(
  all: readonly T[],
  keyOf: (one: T) => string,
): readonly (readonly [string, readonly T[]])[] {
  const keys = [...new Set(all.map(keyOf))];
  return keys.map((key) => [key, all.filter((one) => keyOf(one) === key)]);
}

export function table(head: readonly string[], rows: readonly string[]): string {
  return [`| ${head.join(' | ')} |`, `|${' --- |'.repeat(head.length)}`, ...rows].join('\n');
}

export const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
export const within = (zs: readonly number[]) => zs.filter((z) => Math.abs(z) < 2).length;
export const percent = (part: number, of: number) => (of === 0 ? '-' : `${((100 * part) / of).toFixed(1)} %`);
export const px = (value: number) => (Number.isFinite(value) ? value.toFixed(2) : '-');

export function at(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}
