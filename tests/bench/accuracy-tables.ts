/** Tables of docs/accuracy.md, from what the benches kept. */
import { BUDGET_GROUPS } from '../../src/adjustment/budget-group.ts';
import { REFERENCES } from './accuracy-cells.ts';
import type { NearCell } from './accuracy-near.ts';
import type { Row } from './accuracy-summary.ts';

/** Asked of 95 % of cases: 1/16 in for hand marks of 1 px, 1/32 in for assisted marks of 0.25 px. */
export const ASKED = [
  { sigmaPx: 1, errorMm: 25.4 / 16, inches: '1/16 in' },
  { sigmaPx: 0.25, errorMm: 25.4 / 32, inches: '1/32 in' },
] as const;

/** Asked of the stated U95 and of the arm angle. */
export const HELD_FROM = 0.93;
export const HELD_TO = 0.98;
export const MOST_ANGLE_DEG = 1;

type Column<T> = readonly [title: string, cell: (item: T) => string];

export function summaryTable(rows: readonly Row[]): string {
  const ways = [
    { way: 'plain', cameraStill: false },
    { way: 'plain', cameraStill: true },
    { way: 'careful', cameraStill: false },
    { way: 'careful', cameraStill: true },
    { way: 'calibrated', cameraStill: false },
    { way: 'calibrated', cameraStill: true },
  ] as const;
  const columns = ASKED.flatMap(({ sigmaPx, errorMm }) =>
    ways.map(
      ({ way, cameraStill }): Column<string> => [
        `${sigmaPx} px: ${way}, ${cameraStill ? 'still' : 'hand-held'}`,
        (reference) => {
          const row = rows.find(
            (r) =>
              r.reference === reference &&
              r.way === way &&
              r.cameraStill === cameraStill &&
              r.sigmaPx === sigmaPx,
          );
          if (!row) return '';
          return row.error95Mm <= errorMm ? `**${mm(row.error95Mm)}**` : mm(row.error95Mm);
        },
      ],
    ),
  );
  const shown = columns.filter(([, cell]) => REFERENCES.some((reference) => cell(reference) !== ''));
  return table([['reference', (reference: string) => reference], ...shown], REFERENCES);
}

export function strokeTable(rows: readonly Row[], askedMm: number): string {
  return table<Row>(
    [
      ...CELL_COLUMNS,
      ['scenes', (r) => String(r.scenes)],
      ['error, median', (r) => mm(r.errorMedianMm)],
      ['error, 95 %', (r) => mm(r.error95Mm)],
      [`${mm(askedMm)} mm`, (r) => (r.error95Mm <= askedMm ? 'met' : 'not met')],
      ['U95, median', (r) => mm(r.UMedianMm)],
      ['U95 holds the truth', (r) => percent(r.held, 1) + beyond(r.held)],
      [
        'arm angle error, 95 % (deg)',
        (r) => mm(r.angleError95Deg) + (r.angleError95Deg > MOST_ANGLE_DEG ? ' (>)' : ''),
      ],
      ['its U95 holds', (r) => percent(r.angleHeld, 1) + beyond(r.angleHeld)],
      ['two-point error, median', (r) => mm(r.twoPointMedianMm)],
      ['two-point error, 95 %', (r) => mm(r.twoPoint95Mm)],
      ['ratio of the 95 %', (r) => (r.twoPoint95Mm / r.error95Mm).toFixed(1)],
    ],
    rows,
  );
}

/** Rows of one reference and way together. */
export function findingTable(rows: readonly Row[]): string {
  const groups = REFERENCES.flatMap((reference) =>
    (['plain', 'careful', 'calibrated'] as const).map((way) => ({
      reference,
      way,
      rows: rows.filter((r) => r.reference === reference && r.way === way),
    })),
  ).filter((group) => group.rows.length > 0);
  const total = (group: (typeof groups)[number], of: (row: Row) => number) =>
    group.rows.reduce((sum, row) => sum + of(row), 0);
  const notDecided =
    (sigmaPx: number) =>
    ({ rows: these }: (typeof groups)[number]): string => {
      const some = these.filter((row) => row.sigmaPx === sigmaPx);
      if (some.length === 0) return '';
      return percent(some.reduce((sum, row) => sum + row.notDecided, 0) / some.length, 0);
    };
  return table(
    [
      ['reference', (g) => g.reference],
      ['way', (g) => g.way],
      ['scenes', (g) => String(total(g, (row) => row.scenes))],
      ['over called within', (g) => String(total(g, (row) => row.overCalledWithin))],
      ['within called over', (g) => String(total(g, (row) => row.withinCalledOver))],
      ['not decided at 1 px', notDecided(1)],
      ['at 0.25 px', notDecided(0.25)],
      ['refused', (g) => refusals(g.rows)],
    ],
    groups,
  );
}

export function squarenessTable(rows: readonly Row[]): string {
  const [first] = rows;
  if (!first) return '';
  const columns = first.bySquareness.flatMap(({ fromDeg, toDeg }, i): Column<Row>[] => {
    const range = i === first.bySquareness.length - 1 ? `over ${fromDeg}` : `${fromDeg} to ${toDeg}`;
    return [
      [`${range}: error, 95 %`, (r) => mm(r.bySquareness[i]?.error95Mm ?? Number.NaN)],
      ['U95 holds', (r) => percent(r.bySquareness[i]?.held ?? Number.NaN, 0)],
      ['two-point', (r) => mm(r.bySquareness[i]?.twoPoint95Mm ?? Number.NaN)],
    ];
  });
  return table<Row>([['reference', (r) => r.reference], ['px', (r) => String(r.sigmaPx)], ...columns], rows);
}

export function budgetTable(rows: readonly Row[]): string {
  return table<Row>(
    [
      ...CELL_COLUMNS,
      ['px', (r) => String(r.sigmaPx)],
      ...BUDGET_GROUPS.map((group): Column<Row> => [group, (r) => percent(r.shares[group] ?? 0, 0)]),
    ],
    rows,
  );
}

export function nearTable(cells: readonly NearCell[]): string {
  const [first] = cells;
  if (!first) return '';
  const bins = first.bins.map(({ fromMm, toMm }, i) => {
    const total = (
      key: 'cases' | 'refused' | 'calledWithin' | 'expectedWithin' | 'calledOver' | 'expectedOver',
    ) => cases(cells, i, key);
    return { fromMm, toMm, total };
  });
  return table(
    [
      ['true stroke less limit (mm)', ({ fromMm, toMm }) => `${fromMm} to ${toMm}`],
      ['cases', ({ total }) => String(total('cases'))],
      ['called within', ({ total }) => String(total('calledWithin'))],
      ['expected', ({ total }) => total('expectedWithin').toFixed(1)],
      ['called over', ({ total }) => String(total('calledOver'))],
      ['expected', ({ total }) => total('expectedOver').toFixed(1)],
      ['refused', ({ total }) => String(total('refused'))],
    ],
    bins,
  );
}

export function nearByReferenceTable(cells: readonly NearCell[]): string {
  const groups = REFERENCES.flatMap((reference) =>
    (['plain', 'careful'] as const).map((way) => ({
      reference,
      way,
      cells: cells.filter((c) => c.reference === reference && c.way === way),
    })),
  ).filter((group) => group.cells.length > 0);
  const over = (group: (typeof groups)[number], key: 'cases' | 'calledWithin' | 'expectedWithin') =>
    group.cells.flatMap(({ bins }) => bins).reduce((sum, bin) => sum + (bin.fromMm >= 0 ? bin[key] : 0), 0);
  return table(
    [
      ['reference', (g) => g.reference],
      ['way', (g) => g.way],
      ['cases over the limit', (g) => String(over(g, 'cases'))],
      ['called within', (g) => String(over(g, 'calledWithin'))],
      ['expected', (g) => over(g, 'expectedWithin').toFixed(1)],
      ['farthest over, called within (mm)', (g) => mm(Math.max(...g.cells.map((c) => c.worstOverMm)))],
    ],
    groups,
  );
}

export function table<T>(columns: readonly Column<T>[], items: readonly T[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(([title]) => title)),
    line(columns.map((_c, i) => (i === 0 ? '---' : '---:'))),
    ...items.map((item) => line(columns.map(([, cell]) => cell(item)))),
  ].join('\n');
}

export function mm(value: number): string {
  return value.toFixed(2);
}

function percent(value: number, digits: number): string {
  return `${(100 * value).toFixed(digits)} %`;
}

const CELL_COLUMNS: readonly Column<Row>[] = [
  ['reference', (r) => r.reference],
  ['way', (r) => r.way],
  ['camera', (r) => (r.cameraStill ? 'stands still' : 'hand-held')],
];

function beyond(held: number): string {
  if (held < HELD_FROM) return ' (<)';
  return held > HELD_TO ? ' (>)' : '';
}

function refusals(rows: readonly Row[]): string {
  const entries = rows.flatMap(({ refused }) => Object.entries(refused));
  return entries.length === 0 ? '0' : entries.map(([code, count]) => `${count} ${code}`).join(', ');
}

function cases(cells: readonly NearCell[], bin: number, key: keyof NearCell['bins'][number]): number {
  return cells.reduce((sum, cell) => sum + (cell.bins[bin]?.[key] ?? 0), 0);
}
