/**
 * The numerals of a tape, on photographed prints with truth: how often they are read, and whether rightly. Prints of numeral-print.ts by typefaces that the weights
 * were not fitted on (numeral-glyphs.ts), seeds of their own; strokes measured as if two had been named, face where such a tape has it.
 * STRIPS sets how many.
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { readNumerals } from '../../src/vision/read-numerals.ts';
import { facesOf, HELD_BACK_FACES } from './numeral-glyphs.ts';
import { FIRST_INCH, latticeOn } from './numeral-lattice.ts';
import { photographTape } from './numeral-pictures.ts';
import { INCH_MM, type Print, printTape } from './numeral-print.ts';

const SEEDS = { first: 10000, count: Number(process.env.STRIPS ?? 360) };
/** One in so many has no numerals at all. */
const BLANK_EVERY = 12;
/** A tape bottomed on the face begins there, seen at an angle; one that reads towards it ends there. */
const FACE_OFF_INCHES = 0.6;

type Asked = {
  readonly print: Print;
  readonly hasNumerals: boolean;
  readonly heightPx: number;
  readonly said: 'right' | 'wrong' | 'cannot' | 'no-strokes';
  readonly margin: number;
  readonly seconds: number;
};

export const numeralsStudy = { name: 'numerals', run: study };

function study(): string {
  const faces = facesOf(HELD_BACK_FACES);
  const asked = Array.from({ length: SEEDS.count }, (_, i) => ask(SEEDS.first + i, faces));
  const rows: readonly (readonly [string, (each: Asked) => boolean])[] = [
    ['all with numerals', ({ hasNumerals }) => hasNumerals],
    ['upright', ({ print, hasNumerals }) => hasNumerals && isUpright(print)],
    ['turned a quarter', ({ print, hasNumerals }) => hasNumerals && !isUpright(print)],
    ['under 14 px high', ({ heightPx, hasNumerals }) => hasNumerals && heightPx < 14],
    ['reading towards the face', ({ print, hasNumerals }) => hasNumerals && print.reads(1) < print.reads(0)],
    [
      'a foot as 1F in sight',
      ({ print, hasNumerals }) => hasNumerals && print.feet !== null && hasFoot(print),
    ],
    [
      'counted from one again after it',
      ({ print, hasNumerals }) => hasNumerals && print.feet === 'again' && hasFoot(print),
    ],
    ['no numerals', ({ hasNumerals }) => !hasNumerals],
  ];
  const seconds = asked.map((each) => each.seconds).sort((a, b) => a - b);
  return [
    '| blades | drawn | strokes measured | read right | read wrong | cannot read |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows.map(([name, isOf]) => row(name, asked.filter(isOf))),
    '',
    `Smallest margin of those read right ${least(asked, 'right')}, largest of those read wrong ${most(asked)}. Processor time of a reading in Node: median ${(seconds[seconds.length >> 1] ?? 0).toFixed(2)} s.`,
  ].join('\n');
}

function row(name: string, asked: readonly Asked[]): string {
  const measured = asked.filter(({ said }) => said !== 'no-strokes');
  const count = (said: Asked['said']) => measured.filter((each) => each.said === said).length;
  const share = (n: number) => `${n} (${((100 * n) / Math.max(1, measured.length)).toFixed(1)} %)`;
  return `| ${[name, asked.length, measured.length, share(count('right')), share(count('wrong')), count('cannot')].join(' | ')} |`;
}

const least = (asked: readonly Asked[], said: Asked['said']) =>
  Math.min(...asked.filter((each) => each.said === said).map(({ margin }) => margin)).toFixed(1);

function most(asked: readonly Asked[]): string {
  const margins = asked.filter(({ said }) => said === 'wrong').map(({ margin }) => margin);
  return margins.length > 0 ? Math.max(...margins).toFixed(1) : '-';
}

const isUpright = ({ digits }: Print) => (digits[0]?.turn ?? 0) % 2 === 0;

const hasFoot = ({ reads, inches }: Print) =>
  Array.from({ length: inches + 1 }, (_, place) => reads(place)).some((inch) => inch > 0 && inch % 12 === 0);

function ask(seed: number, faces: ReturnType<typeof facesOf>): Asked {
  const draw = drawFrom(seed);
  const hasNumerals = seed % BLANK_EVERY !== 0;
  const print = printTape(draw, faces, hasNumerals);
  const photo = photographTape(draw, print);
  const asked = { print, hasNumerals, heightPx: (print.digits[0]?.heightMm ?? 0) * photo.pxPerMm };
  const lattice = latticeOn(draw, photo, print);
  if (!lattice) return { ...asked, said: 'no-strokes', margin: 0, seconds: 0 };
  const begun = process.cpuUsage().user;
  const read = readNumerals(photo.gray, lattice, faceMm(draw, print));
  const seconds = (process.cpuUsage().user - begun) / 1e6;
  if (!read) return { ...asked, said: 'cannot', margin: 0, seconds };
  const sign = print.reads(1) - print.reads(0);
  const isRight = read.sign === sign && read.byInches === print.reads(0) - sign * FIRST_INCH;
  return { ...asked, said: isRight && hasNumerals ? 'right' : 'wrong', margin: read.margin, seconds };
}

function faceMm(draw: Draw, { reads }: Print): number {
  const begin = reads(1) > reads(0) ? FIRST_INCH - reads(0) : FIRST_INCH;
  return (begin + draw.uniform(-FACE_OFF_INCHES, FACE_OFF_INCHES)) * INCH_MM;
}
