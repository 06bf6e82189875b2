/** The tables of the study of edges across the rod. */
import { at, px, rms, table } from './assists-marks-tables.ts';

/** Along the rod, in pixels. is: what the hand meant, another edge of the chamber, or something else, as on the rod. */
export type EdgeAsked = {
  readonly name: string;
  readonly number: number;
  readonly hasRod: boolean;
  readonly tookMs: number;
  readonly reason: string | null;
  readonly handPx: number;
  readonly edges: readonly {
    readonly offPx: number;
    readonly sigmaPx: number;
    readonly is: 'meant' | 'chamber' | 'else';
  }[];
};

const meantOf = ({ edges }: EdgeAsked) => edges.find(({ is }) => is === 'meant') ?? null;

export function edgeTable(asked: readonly EdgeAsked[]): string {
  const rows = [...new Set(asked.map(({ name }) => name))].map((name) => {
    const all = asked.filter((each) => each.name === name);
    const withRod = all.filter(({ hasRod }) => hasRod);
    const shown = withRod.filter(({ edges }) => edges.length > 0);
    const meant = shown.flatMap((each) => meantOf(each) ?? []);
    const offs = meant.map(({ offPx }) => Math.abs(offPx));
    const one = shown.filter(({ edges }) => edges.length === 1);
    const cells = [
      share(withRod.length, all.length),
      share(shown.length, all.length),
      `${meant.length} of ${shown.length}`,
      `${one.filter(meantOf).length} of ${one.length}`,
      shown.flatMap(({ edges }) => edges.filter(({ is }) => is === 'chamber')).length,
      shown.flatMap(({ edges }) => edges.filter(({ is }) => is === 'else')).length,
      px(at(offs, 0.5)),
      px(at(offs, 0.9)),
      px(rms(meant.map(({ offPx, sigmaPx }) => offPx / sigmaPx))),
    ];
    return `| ${[name, all.length, ...cells].join(' | ')} |`;
  });
  const head = [
    'pictures',
    'asked',
    'rod found',
    'edges shown',
    'the one meant among them',
    'where one is shown, it',
    'other edges of the chamber',
    'edges of nothing of it',
    'off median px',
    'off 90 % px',
    'z rms',
  ];
  const took = asked.filter(({ hasRod }) => hasRod).map(({ tookMs }) => tookMs);
  return `${table(head, rows)}\n\nProcessor time of a picture in Node, median, its rod found before: ${at(took, 0.5).toFixed(0)} ms.`;
}

/** What differs between the two marks of a pair along the rod, is taken for stroke. */
export function pairTable(pairs: readonly (readonly [EdgeAsked, EdgeAsked])[]): string {
  const both = pairs.flatMap(([a, b]) => {
    const [first, second] = [meantOf(a), meantOf(b)];
    return first && second
      ? [{ found: Math.abs(first.offPx - second.offPx), hand: Math.abs(a.handPx - b.handPx) }]
      : [];
  });
  const row = (name: string, of: 'found' | 'hand') => {
    const offs = both.map((each) => each[of]);
    const within = offs.filter((off) => off <= 0.5).length;
    return `| ${[name, both.length, px(at(offs, 0.5)), px(at(offs, 0.9)), px(Math.max(...offs)), share(within, offs.length)].join(' | ')} |`;
  };
  const head = [
    `marks of both pictures, ${pairs.length} pairs`,
    'pairs in which both have the one meant',
    'difference median px',
    '90 %',
    'largest',
    'within 0.5 px',
  ];
  return table(head, [row('the edge that was meant, taken', 'found'), row('by hand, off by 2 px', 'hand')]);
}

const share = (part: number, of: number) => (of === 0 ? '-' : `${((100 * part) / of).toFixed(1)} %`);
