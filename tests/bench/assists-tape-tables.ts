/** The tables of the study of a tape of which nothing is named. */
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import { isWrong } from './assists-marks-tables.ts';

type Off = { readonly offPx: number; readonly sigmaPx: number };
export type TapeAsked = {
  readonly kind: string;
  readonly number: number;
  readonly hasTape: boolean;
  readonly seconds: number;
  /** read: by its numerals; misread: whether a reading an inch too large was taken; marks: as they were found. */
  readonly seen: null | {
    readonly inPlace: boolean;
    readonly count: number;
    readonly named: readonly Off[] | null;
    readonly read: 'right' | 'wrong' | null;
    readonly misread: boolean;
    readonly marks: readonly FoundMark[];
  };
};

/** Wrong and confident, as soon as one of its marks is. */
export const isWrongTape = (marks: readonly Off[]): boolean =>
  marks.some(({ offPx, sigmaPx }) => isWrong(Math.abs(offPx), sigmaPx));

export function tapeSeenTable(asked: readonly TapeAsked[]): string {
  const kinds = [...new Set(asked.map(({ kind, hasTape }) => `${kind}${hasTape ? '' : ', no tape'}`))];
  const of = (kind: string) =>
    asked.filter((each) => `${each.kind}${each.hasTape ? '' : ', no tape'}` === kind);
  const tapes = asked.filter(({ hasTape }) => hasTape);
  const seconds = asked.map((each) => each.seconds).sort((a, b) => a - b);
  const rows = [...kinds.map((kind) => row(kind, of(kind))), row('all with a tape', tapes)];
  return [
    '| pictures | asked | strokes shown | shown in a wrong place | numerals read | read wrong | offered once one is named | marks each | off median px | off 90 % px | z rms | wrong and confident | taken though misread by 1 in |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
    '',
    `Processor time of a picture in Node: median ${at(seconds, 0.5).toFixed(2)} s, most ${at(seconds, 1).toFixed(2)} s.`,
  ].join('\n');
}

function row(kind: string, asked: readonly TapeAsked[]): string {
  const seen = asked.flatMap((each) => each.seen ?? []);
  const offered = seen.flatMap(({ named }) => (named ? [named] : []));
  const offs = offered.flat();
  const sizes = offs.map(({ offPx }) => Math.abs(offPx)).sort((a, b) => a - b);
  const zs = offs.map(({ offPx, sigmaPx }) => offPx / sigmaPx);
  const rms = Math.sqrt(zs.reduce((sum, z) => sum + z * z, 0) / Math.max(1, zs.length));
  const wrong = offered.filter(isWrongTape);
  const has = asked.some(({ hasTape }) => hasTape);
  const share = (count: number) => `${((100 * count) / asked.length).toFixed(1)} %`;
  const cells = [
    kind,
    asked.length,
    `${seen.length} (${share(seen.length)})`,
    seen.filter(({ inPlace }) => !inPlace).length,
    seen.filter(({ read }) => read !== null).length,
    seen.filter(({ read }) => read === 'wrong').length,
    has ? `${offered.length} (${share(offered.length)})` : '-',
    offered.length > 0 ? Math.round(offs.length / offered.length) : '-',
    sizes.length > 0 ? at(sizes, 0.5).toFixed(2) : '-',
    sizes.length > 0 ? at(sizes, 0.9).toFixed(2) : '-',
    zs.length > 0 ? rms.toFixed(2) : '-',
    has ? `${wrong.length} of ${asked.length}` : '-',
    has ? seen.filter(({ misread }) => misread).length : '-',
  ];
  return `| ${cells.join(' | ')} |`;
}

const at = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
