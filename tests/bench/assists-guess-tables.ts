/** The tables of the first guess. */
import type { FoundEnd } from '../../src/vision/guess-sight.ts';
import { FOUND_HEADS, foundCells, groups, table } from './assists-marks-tables.ts';

/** errors: px, against the first mark; null where nothing was offered, then with the reason. */
export type Asked = {
  readonly pair: string;
  readonly of: FoundEnd['of'];
  readonly handPx: number;
  readonly seconds: number;
  readonly errors: readonly [number, number] | null;
  readonly sigmaPx: number;
  readonly because: string | null;
};

export function guessTable(
  sets: readonly { readonly name: string; readonly asked: readonly Asked[] }[],
): string {
  const rows = sets.flatMap(({ name, asked }) =>
    groups(asked, ({ of, handPx }) => `${of} | ${handPx}`).map(
      ([which, all]) => `| ${name} | ${which} | ${cellsOf(all)} |`,
    ),
  );
  const all = sets.filter(({ name }) => name !== 'sample media').flatMap(({ asked }) => asked);
  const seconds = all.map((each) => each.seconds).sort((a, b) => a - b);
  const middle = seconds[seconds.length >> 1] ?? 0;
  return `${table(['pictures', 'kind', 'hand px', 'asked', ...FOUND_HEADS, 'not offered because'], [...rows, `| all but the sample media | | | ${cellsOf(all)} |`])}\n\nProcessor time of a pair in Node, median: ${middle.toFixed(1)} s.`;
}

function cellsOf(all: readonly Asked[]): string {
  const found = all.flatMap(({ errors, sigmaPx }) => (errors ? [{ errors, sigmaPx }] : []));
  const cells = foundCells(found, all.length, (count, of) => `${count} of ${of}`);
  return [all.length, ...cells, reasons(all.flatMap(({ because }) => because ?? []))].join(' | ');
}

const reasons = (list: readonly string[]) =>
  [...groups(list, (each) => each)]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(([reason, { length }]) => `${reason} ${length}`)
    .join(', ');

type Silent = readonly { readonly name: string; readonly offered: number }[];

export function refusedTable({
  others,
  strangers,
  gravel,
  same,
}: {
  readonly others: Silent;
  readonly strangers: Silent;
  readonly gravel: Silent;
  readonly same: readonly Asked[];
}): string {
  const line = (name: string, all: Silent) => {
    const wrongly = all.filter(({ offered }) => offered > 0);
    return `| ${name} | ${all.length} | ${wrongly.length} | ${wrongly.map((each) => each.name).join('; ')} |`;
  };
  const silent = table(
    ['second picture', 'asked', 'something offered', 'which'],
    [
      line('of the next pair, another wheel end', others),
      line('of a pair of another kind', strangers),
      line('gravel', gravel),
    ],
  );
  const twice = table(
    ['the same picture twice', 'asked', ...FOUND_HEADS, 'not offered because'],
    [`| all | ${cellsOf(same)} |`],
  );
  return `${silent}\n\n${twice}`;
}
