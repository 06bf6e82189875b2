/** The table of the same end in two pictures. */
import { at, groups, isWrong, percent, px, rms, table, within } from './assists-marks-tables.ts';

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
    const offs = found.map(({ errors }) => Math.hypot(...errors));
    const zs = found.flatMap(({ errors, sigmaPx }) => errors.map((error) => error / sigmaPx));
    const wrong = found.filter(({ errors, sigmaPx }) => isWrong(Math.hypot(...errors), sigmaPx)).length;
    const cells = [
      percent(found.length, all.length),
      px(at(offs, 0.5)),
      px(at(offs, 0.9)),
      px(rms(zs)),
      percent(within(zs), zs.length),
      `${wrong} of ${all.length}`,
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
      'found',
      'error median px',
      'error 90 % px',
      'z rms',
      'within 2 sigma',
      'wrong and confident',
      'along the rod by two hands, rms mm',
      'by hand and assist, rms mm',
    ],
    rows,
  );
}
