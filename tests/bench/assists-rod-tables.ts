/** The table of the study of the rod's edges. */
import { at, px, rms, table } from './assists-marks-tables.ts';

export type RodAsked = {
  readonly name: string;
  readonly tookMs: number;
  readonly reason: string | null;
  readonly found: {
    /** Of both marks, across the true middle line; in pixels, and over what they state. */
    readonly offsPx: readonly number[];
    readonly zs: readonly number[];
    /** Of the line through them; and were both marked by a hand. */
    readonly angleRad: number;
    readonly handRad: number;
    readonly wrong: boolean;
  } | null;
};

export function rodTable(asked: readonly RodAsked[]): string {
  const names = [...new Set(asked.map(({ name }) => name))];
  const rows = names.map((name) => {
    const all = asked.filter((each) => each.name === name);
    const found = all.flatMap((each) => each.found ?? []);
    const offs = found.flatMap(({ offsPx }) => offsPx.map(Math.abs));
    const zs = found.flatMap((each) => each.zs);
    const angles = found.map(({ angleRad }) => (180 / Math.PI) * angleRad);
    const hands = found.map(({ handRad }) => (180 / Math.PI) * handRad);
    const cells =
      found.length === 0
        ? Array<string>(8).fill('-')
        : [
            px(at(offs, 0.5)),
            px(at(offs, 0.9)),
            px(Math.max(...offs)),
            px(rms(zs)),
            percent(zs.filter((z) => Math.abs(z) <= 2).length, zs.length),
            px(at(angles, 0.5)),
            px(at(angles, 0.9)),
            px(at(hands, 0.9)),
          ];
    const wrong = found.filter((each) => each.wrong).length;
    return `| ${[name, all.length, percent(found.length, all.length), ...cells, `${wrong} of ${all.length}`, reasons(all)].join(' | ')} |`;
  });
  const head = [
    'pictures',
    'asked',
    'found',
    'off median px',
    'off 90 % px',
    'largest px',
    'z rms',
    'within 2 sigma',
    'direction off: median, degrees',
    '90 %',
    '90 %, two marks of a hand',
    'wrong and confident',
    'refused because',
  ];
  const took = at(
    asked.map(({ tookMs }) => tookMs),
    0.5,
  );
  return `${table(head, rows)}\n\nProcessor time of a picture in Node, median: ${took.toFixed(0)} ms.`;
}

const percent = (part: number, of: number) => (of === 0 ? '-' : `${((100 * part) / of).toFixed(1)} %`);

function reasons(all: readonly RodAsked[]): string {
  const given = all.flatMap(({ reason }) => reason ?? []);
  return [...new Set(given)]
    .map((reason) => ({ reason, count: given.filter((each) => each === reason).length }))
    .sort((a, b) => b.count - a.count)
    .map(({ reason, count }) => `${reason} ${count}`)
    .join(', ');
}
