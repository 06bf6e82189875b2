/** What printed pages share: coded markers and check lines as SVG in millimetres. */
import { CHECK_LINE_MM } from './target-card.ts';

type PlaceMm = readonly [number, number];

export type DrawnMarker = {
  /** Inner cells, top row first; 1 white. */
  readonly rows: readonly string[];
  /** Top left first, clockwise as printed. */
  readonly cornersMm: readonly [PlaceMm, PlaceMm, PlaceMm, PlaceMm];
};

/** White cells on a black square; a cell reaches a little into a white neighbour, so that no seam is drawn between them. */
export function markerDrawing({ rows, cornersMm: [[left, top], [right]] }: DrawnMarker): string {
  const sideMm = right - left;
  const cellMm = sideMm / (rows.length + 2);
  const isWhite = (row: number, column: number) => rows[row]?.[column] === '1';
  const reach = (into: boolean) => cellMm + (into ? cellMm / 20 : 0);
  const white = rows.flatMap((row, j) =>
    [...row].flatMap((_, i) => {
      if (!isWhite(j, i)) return [];
      const [across, down] = [reach(isWhite(j, i + 1)), reach(isWhite(j + 1, i))];
      return `M${left + (i + 1) * cellMm} ${top + (j + 1) * cellMm}h${across}v${down}h${-across}z`;
    }),
  );
  const black = `<rect x="${left}" y="${top}" width="${sideMm}" height="${sideMm}"/>`;
  return `${black}<path fill="#fff" d="${white.join('')}"/>`;
}

/** To the right from its origin. The outer edges of the end ticks are the line's ends. */
export function checkLineDrawing(): string {
  const thick = 0.3;
  const ticks = Array.from({ length: CHECK_LINE_MM / 10 + 1 }, (_, index) => {
    const end = index === 0 || index * 10 === CHECK_LINE_MM;
    const middle =
      index * 10 === CHECK_LINE_MM ? CHECK_LINE_MM - thick / 2 : index === 0 ? thick / 2 : index * 10;
    const high = end ? 8 : 3;
    return `<rect x="${middle - thick / 2}" y="${-high}" width="${thick}" height="${high}"/>`;
  });
  return [`<rect y="${-thick}" width="${CHECK_LINE_MM}" height="${thick}"/>`, ...ticks].join('\n');
}
