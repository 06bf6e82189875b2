/**
 * The first guess of a second picture's marks: what is offered, how far off it is, and whether it is silent where it must be: pictures of two
 * wheel ends, gravel. Pictures: assists-guess-kept.ts; --clips FOLDER adds those of clips.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { guessMarks } from '../../src/vision/guess-marks.ts';
import type { FoundEnd, GuessQuestion } from '../../src/vision/guess-sight.ts';
import type { Point } from '../../src/vision/point.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';
import {
  clipPairs,
  type GuessPair,
  type GuessShot,
  gravel,
  renderedPairs,
  samplePairs,
  type TrueMarks,
} from './assists-guess-kept.ts';
import { type Asked, guessTable, refusedTable } from './assists-guess-tables.ts';

/** None of these was looked at; below 200 some were. */
const BARE = Array.from({ length: 24 }, (_, i) => 3000 + i);
const HELD = Array.from({ length: 22 }, (_, i) => 2000 + i);
const hasTape = (number: number) => number % 4 === 1;
const HANDS = [2];
/** Of those that must be refused, and of one picture twice. */
const MOST_OTHERS = 12;
const MOST_GRAVEL = 4;

export const guessStudy = { name: 'guess', run: study };

async function study(clips: string | null): Promise<string> {
  const sets = [
    { name: 'ray-traced, nothing held', pairs: renderedPairs('bare', BARE) },
    { name: 'ray-traced, tape', pairs: renderedPairs('held', HELD.filter(hasTape)) },
    {
      name: 'ray-traced, printed target',
      pairs: renderedPairs(
        'held',
        HELD.filter((each) => !hasTape(each)),
      ),
    },
    ...clipSets(clips === null ? [] : clipPairs(clips)),
    { name: 'sample media', pairs: samplePairs() },
  ];
  const asked = sets.map(({ name, pairs }) => ({ name, asked: [] as Asked[], pairs }));
  const guesser = await newGuesser();
  for (const { asked: all, pairs } of asked)
    for (const [i, pair] of pairs.entries())
      for (const handPx of HANDS) all.push(...guesser.ofPair(pair, handPx, i));
  return [guessTable(asked), refusedTable(await guesser.ofOthers(sets.map(({ pairs }) => pairs)))].join(
    '\n\n',
  );
}

/** Clips drawn after this was made (tracking_clip_list.py) apart. */
const clipSets = (pairs: readonly GuessPair[]) =>
  [
    { name: 'frames of clips, not seen before', pairs: pairs.filter(isHeldBack) },
    {
      name: 'frames of clips, of which some were looked at',
      pairs: pairs.filter((pair) => !isHeldBack(pair)),
    },
  ].filter((set) => set.pairs.length > 0);

const isHeldBack = ({ name }: GuessPair) => /^held-\d+$/.test(name);

type Kind = FoundEnd['of'];
const KINDS = { 'clevis-pin': 'pin', 'camshaft-end': 'camshaft' } as const;

export async function newGuesser() {
  const cv = await nodeOpencv();

  /** As a hand marks them; off: what each is off by. */
  function marked(marks: TrueMarks, handPx: number, seed: number) {
    const draw = drawFrom(seed);
    const off = (): Point => [draw.normal(0, handPx), draw.normal(0, handPx)];
    const offs = { face: off(), pin: off(), camshaft: off() };
    const known = (key: keyof TrueMarks) => ({
      placePx: [marks[key][0] + offs[key][0], marks[key][1] + offs[key][1]] as const,
      sigmaPx: handPx,
    });
    const question: GuessQuestion = {
      facePx: known('face').placePx,
      pin: known('pin'),
      camshaft: known('camshaft'),
    };
    return { question, offs };
  }

  function ask(one: Gray, other: Gray, question: GuessQuestion) {
    const begun = process.cpuUsage().user;
    const guess = guessMarks(cv, one, other, question);
    const seconds = (process.cpuUsage().user - begun) / 1e6;
    return { guess, seconds };
  }

  function ofPair({ name, shots: [one, other] }: GuessPair, handPx: number, seed: number): readonly Asked[] {
    const { question, offs } = marked(one.marks, handPx, 1000 * seed + handPx);
    const { guess, seconds } = ask(one.gray(), other.gray(), question);
    return (Object.keys(KINDS) as Kind[]).map((of): Asked => {
      const asked = { pair: name, of, handPx, seconds };
      if (!guess.ok) return { ...asked, errors: null, sigmaPx: 0, because: guess.failure.code };
      const found = guess.value.found.find((each) => each.of === of);
      const because = guess.value.missed.find((each) => each.of === of)?.because ?? 'unlike';
      if (!found) return { ...asked, errors: null, sigmaPx: 0, because };
      const should = carried(one.marks, other.marks, of, offs[KINDS[of]]);
      const errors = [found.placePx[0] - should[0], found.placePx[1] - should[1]] as const;
      return { ...asked, errors, sigmaPx: found.sigmaPx, because: null };
    });
  }

  /** Of a second picture that is another's. */
  function offered(one: GuessShot, other: Gray): readonly FoundEnd[] {
    const { question } = marked(one.marks, 1, 1);
    const { guess } = ask(one.gray(), other, question);
    return guess.ok ? guess.value.found : [];
  }

  /** Pictures of which nothing must be offered: of each set's pairs the first picture, with the second of the next pair; gravel. */
  async function ofOthers(sets: readonly (readonly GuessPair[])[]) {
    const draw = drawFrom(7);
    const all = sets.flat();
    const few = <T>(list: readonly T[], most: number) =>
      list.filter(
        (_, i) => Math.floor((i * most) / list.length) !== Math.floor(((i - 1) * most) / list.length),
      );
    const next = sets.flatMap((pairs) =>
      pairs.map((pair, i) => [pair, pairs[(i + 1) % pairs.length] as GuessPair] as const),
    );
    const strange = all.map(
      (pair, i) => [pair, all[(i + (all.length >> 1)) % all.length] as GuessPair] as const,
    );
    const silent = ([one, other]: readonly [GuessPair, GuessPair]) => ({
      name: `${one.name} with ${other.name}`,
      offered: offered(one.shots[0], other.shots[1].gray()).length,
    });
    return {
      others: few(next, MOST_OTHERS).map(silent),
      strangers: few(strange, MOST_OTHERS).map(silent),
      gravel: few(all, MOST_GRAVEL).map(({ name, shots: [one] }) => {
        const { widthPx, heightPx } = one.gray();
        const stones = gravel(widthPx, heightPx, () => draw.uniform(0, 1));
        return { name: `${name} with gravel`, offered: offered(one, stones).length };
      }),
      same: few(all, MOST_OTHERS).flatMap(({ shots: [one] }, i) =>
        ofPair({ name: 'same', shots: [one, one] }, 1, i),
      ),
    };
  }

  return { ofPair, ofOthers, offered };
}

/** The same point of the metal: what the mark is off by, turned and as large as the part is in the other picture. */
function carried(one: TrueMarks, other: TrueMarks, of: Kind, [dx, dy]: Point): Point {
  const way = ({ face, pin, camshaft }: TrueMarks) => {
    const from = of === 'clevis-pin' ? face : camshaft;
    return Math.atan2(pin[1] - from[1], pin[0] - from[0]);
  };
  const still = ({ face, camshaft }: TrueMarks) => Math.hypot(face[0] - camshaft[0], face[1] - camshaft[1]);
  const turn = way(other) - way(one);
  const larger = still(other) / still(one);
  const [c, s] = [larger * Math.cos(turn), larger * Math.sin(turn)];
  const [x, y] = other[KINDS[of]];
  return [x + c * dx - s * dy, y + s * dx + c * dy];
}
