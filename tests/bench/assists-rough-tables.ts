/** The table of the study of what is seen before anything is marked. */

export type RoughAsked = {
  readonly kind: string;
  readonly seconds: number;
  readonly tape: { readonly likely: boolean; readonly right: boolean } | null;
  /** Of the places from the true rim, rms; infinite where there is none. */
  readonly bandOffPx: number | null;
  readonly axis: { readonly turnDeg: number; readonly pinOff: number } | null;
};

/** Farther off, rms, they lie on another edge. */
const OTHER_EDGE_PX = 2.5;
/** Of the length from face to pin: farther from the axis, the pin is not where the line leads the eye. */
const MOST_PIN_OFF = 0.15;

export function roughTable(asked: readonly RoughAsked[]): string {
  const kinds = [...new Set(asked.map(({ kind }) => kind))];
  const seconds = asked.map((each) => each.seconds);
  return [
    '| pictures | asked | tape seen | of these likely | tape wrong | band seen | band wrong | band off px, most | axis turned, degrees, 90 % | pin from the axis, over face to pin, 90 % | axis wrong | anything likely and wrong |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...kinds.map((kind) =>
      row(
        kind,
        asked.filter((each) => each.kind === kind),
      ),
    ),
    '',
    `Processor time of a picture in Node: median ${at(seconds, 0.5).toFixed(1)} s, 90 % ${at(seconds, 0.9).toFixed(1)} s, most ${at(seconds, 1).toFixed(1)} s.`,
  ].join('\n');
}

const isOtherEdge = (offPx: number) => offPx > OTHER_EDGE_PX;
const isOffPin = ({ pinOff }: NonNullable<RoughAsked['axis']>) => pinOff > MOST_PIN_OFF;

function isSureAndWrong({ tape, bandOffPx, axis }: RoughAsked) {
  const wrongBand = bandOffPx !== null && (isOtherEdge(bandOffPx) || axis === null || isOffPin(axis));
  return wrongBand || (tape?.likely && !tape.right);
}

function row(kind: string, asked: readonly RoughAsked[]): string {
  const tapes = asked.flatMap(({ tape }) => tape ?? []);
  const bands = asked.flatMap(({ bandOffPx }) => bandOffPx ?? []);
  const axes = asked.flatMap(({ axis }) => axis ?? []);
  const some = (values: readonly number[], share: number, digits: number) =>
    values.length > 0 ? at(values, share).toFixed(digits) : '-';
  const cells = [
    kind,
    asked.length,
    `${tapes.length} (${((100 * tapes.length) / asked.length).toFixed(0)} %)`,
    tapes.filter(({ likely }) => likely).length,
    tapes.filter(({ right }) => !right).length,
    bands.length,
    bands.filter(isOtherEdge).length,
    some(bands, 1, 1),
    some(
      axes.map(({ turnDeg }) => turnDeg),
      0.9,
      1,
    ),
    some(
      axes.map(({ pinOff }) => pinOff),
      0.9,
      2,
    ),
    axes.filter(isOffPin).length,
    asked.filter(isSureAndWrong).length,
  ];
  return `| ${cells.join(' | ')} |`;
}

function at(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
