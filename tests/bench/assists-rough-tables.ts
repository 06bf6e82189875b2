/** The tables of the study of what is seen before anything is marked. */
import { atMostText } from './at-most.ts';

export type RoughAsked = {
  readonly kind: string;
  readonly seconds: number;
  readonly tape: { readonly likely: boolean; readonly right: boolean } | null;
  /** Of the places from the true rim, rms; infinite where there is none. */
  readonly bandOffPx: number | null;
  readonly axis: { readonly turnDeg: number; readonly pinOff: number } | null;
  /** The ends: with tape and axis given (assists-rough-given.ts). */
  readonly isGiven: boolean;
  readonly pin: EndSeen | null;
  readonly camshaft: EndSeen | null;
};

/** off: of the true middle, over the radius of the ring that is drawn; infinite where there is none. */
type EndSeen = { readonly likely: boolean; readonly off: number };

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
    '| ends, with the axis | asked | camshaft likely | of these wrong | camshaft perhaps | of these wrong | pin perhaps | of these wrong |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...[false, true].flatMap((isGiven) =>
      kinds.flatMap((kind) => {
        const of = asked.filter(
          (each) => each.kind === kind && each.isGiven === isGiven && (isGiven || each.axis),
        );
        return of.length > 0 ? [endsRow(`${kind}, ${isGiven ? 'given' : 'seen'}`, of)] : [];
      }),
    ),
    '',
    ...(['tape', 'axis', 'camshaft'] as const).map((thing) => likelyText(thing, asked)),
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

const isOffEnd = ({ off }: EndSeen) => off > 1;

function endsRow(kind: string, asked: readonly RoughAsked[]): string {
  const camshafts = asked.flatMap(({ camshaft }) => camshaft ?? []);
  const told = [
    camshafts.filter(({ likely }) => likely),
    camshafts.filter(({ likely }) => !likely),
    asked.flatMap(({ pin }) => pin ?? []),
  ];
  const cells = told.flatMap((ends) => [ends.length, ends.filter(isOffEnd).length]);
  return `| ${[kind, asked.length, ...cells].join(' | ')} |`;
}

/** Of what is told as likely, and of all that were asked. */
function likelyText(thing: 'tape' | 'axis' | 'camshaft', asked: readonly RoughAsked[]): string {
  const wrongs = asked.flatMap(({ tape, axis, bandOffPx, camshaft }): readonly boolean[] => {
    if (thing === 'tape') return tape?.likely ? [!tape.right] : [];
    if (thing === 'axis') return bandOffPx === null ? [] : [axis === null || isOffPin(axis)];
    return camshaft?.likely ? [isOffEnd(camshaft)] : [];
  });
  const wrong = wrongs.filter(Boolean).length;
  return `- ${thing}: likely ${wrongs.length}, wrong ${wrong}: of those likely at most ${atMostText(wrong, wrongs.length)}, of all ${asked.length} asked at most ${atMostText(wrong, asked.length)} (95 %).`;
}

function at(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
