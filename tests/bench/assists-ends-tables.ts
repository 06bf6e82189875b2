/** The table of the same end in two pictures. */
import { FOUND_HEADS, foundCells, groups, px, rms, table } from './assists-marks-tables.ts';

/** errors: of the second mark against the first, px; null where it was refused. Millimetres: of those along the rod. */
export type PairDrawn = {
  readonly kind: string;
  readonly handPx: number;
  readonly errors: readonly [number, number] | null;
  readonly sigmaPx: number;
  readonly byHandMm: number;
  readonly byAssistMm: number | null;
};

export function pairTable(drawn: readonly PairDrawn[]): string {
  const rows = groups(drawn, ({ kind, handPx }) => `${kind} | ${handPx}`).map(([name, all]) => {
    const found = all.flatMap(({ errors, sigmaPx, byHandMm, byAssistMm }) =>
      errors && byAssistMm !== null ? [{ errors, sigmaPx, byHandMm, byAssistMm }] : [],
    );
    const cells = [
      ...foundCells(found, all.length, (count, of) => `${count} of ${of}`),
      px(rms(found.map(({ byHandMm }) => byHandMm))),
      px(rms(found.map(({ byAssistMm }) => byAssistMm))),
    ];
    return `| ${name} | ${all.length} | ${cells.join(' | ')} |`;
  });
  return table(
    [
      'kind',
      'hand px',
      'asked',
      ...FOUND_HEADS,
      'along the rod by two hands, rms mm',
      'by hand and assist, rms mm',
    ],
    rows,
  );
}
