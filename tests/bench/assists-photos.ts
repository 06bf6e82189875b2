/**
 * What the assists offer on photographs in which there is no brake: all of it is wrong. Asked at random places and directions, and about round
 * things, which are the hard ones; each offer is kept in node_modules/.cache/assists-photos/offers.json, to be looked at.
 * Pictures: assists-photos-list.ts.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { pictureFaults } from '../../src/measurement/picture-faults.ts';
import { assist } from '../../src/vision/assist.ts';
import type { AssistQuestion, EndMarks } from '../../src/vision/assist-sight.ts';
import { type Gray, grayOf } from '../../src/vision/gray.ts';
import { judgePaint } from '../../src/vision/paint-judge.ts';
import { paintBox, type RodLine } from '../../src/vision/paint-region.ts';
import { type Picture, pictureQuality } from '../../src/vision/picture-quality.ts';
import type { Point } from '../../src/vision/point.ts';
import { newGuesser } from './assists-guess.ts';
import { rgbaOfFile } from './assists-marks-picture.ts';
import { type Photo, photosHere, type RoundThing } from './assists-photos-list.ts';
import { atMostText } from './at-most.ts';

export const photosStudy = { name: 'photos', run: study };

/** Of each photograph: searches of a second each, of milliseconds each. */
const SLOW_PLACES = 4;
const QUICK_PLACES = 12;
/** Of each round thing. */
const ROUND_PLACES = 6;
const HAND_PX = 2;
/** Of a rod from face to pin, mm, and half its thickness: common practice, no source. */
const ROD_MM = 130;
const HALF_ROD_MM = 8;
const INCH = 25.4;
/** Over the length from face to pin, of bands, pins and camshafts: domain of the project's renders. */
const BAND_PART = 0.8;
const END_PART = { 'clevis-pin': 0.05, 'camshaft-end': 0.13 } as const;
const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-photos', import.meta.url));

export type Seen = { readonly photo: Photo; readonly gray: Gray; readonly picture: Picture };
type Offer = {
  readonly photo: string;
  readonly question: unknown;
  readonly marks: readonly { readonly placePx: Point; readonly sigmaPx: number }[];
};
/** What was asked, in the order of the table. */
export type Asked = { readonly what: string; readonly photo: string; readonly offer: Offer | null };

async function study(): Promise<string> {
  const photos = photosHere();
  if (photos.length === 0)
    return 'Not made: none of the packages with photographs is installed (tests/bench/assists-photos-list.ts names them).';
  const asked: Asked[] = [];
  let before: Seen | null = null;
  for (const [i, photo] of photos.entries()) {
    const seen = look(photo);
    asked.push(...askedOf(seen, before, 7000 + i));
    before = seen;
  }
  asked.push(...(await guessed(photos)));
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(
    `${FOLDER}/offers.json`,
    JSON.stringify(asked.flatMap(({ what, offer }) => (offer ? [{ what, ...offer }] : []))),
  );
  return `${photoTable(asked)}\n\n${qualityTable(photos)}`;
}

export function look(photo: Photo): Seen {
  const picture = rgbaOfFile(photo.file);
  return { photo, picture, gray: grayOf(picture.rgba, picture.widthPx, picture.heightPx) };
}

/** All but the first guess; before: another photograph. */
export function askedOf(seen: Seen, before: Seen | null, seed: number): readonly Asked[] {
  const draw = drawFrom(seed);
  return [
    ...anywhere(seen, draw),
    ...aboutRound(seen, draw),
    ...(before ? asSecond(before, seen, draw) : []),
  ];
}

/** Face, pin and camshaft somewhere in the picture. */
function placed({ widthPx, heightPx }: Gray, draw: Draw): EndMarks & { readonly lengthPx: number } {
  const least = Math.min(widthPx, heightPx);
  const inside = ([x, y]: Point) => x > 5 && y > 5 && x < widthPx - 5 && y < heightPx - 5;
  for (;;) {
    const lengthPx = draw.uniform(0.2, 0.6) * least;
    const facePx: Point = [draw.uniform(0, widthPx), draw.uniform(0, heightPx)];
    const way = draw.uniform(0, 2 * Math.PI);
    const pinPx = beyond(facePx, way, lengthPx);
    const aside = (draw.uniform(0, 1) < 0.5 ? 1 : -1) * draw.uniform(1.3, 1.8);
    const camshaftPx = beyond(pinPx, way + aside, lengthPx * draw.uniform(0.9, 1.2));
    if ([facePx, pinPx, camshaftPx].every(inside)) return { facePx, pinPx, camshaftPx, lengthPx };
  }
}

const beyond = ([x, y]: Point, way: number, px: number): Point => [
  x + px * Math.cos(way),
  y + px * Math.sin(way),
];

function ask(what: string, { photo, gray }: Seen, question: AssistQuestion, second?: Gray): Asked {
  const found = assist(gray, question, second ?? null);
  const offer = found.ok ? { photo: photo.name, question, marks: found.value.marks } : null;
  return { what, photo: photo.name, offer };
}

function anywhere(seen: Seen, draw: Draw): readonly Asked[] {
  const slow = Array.from({ length: SLOW_PLACES }, () => placed(seen.gray, draw));
  const quick = Array.from({ length: QUICK_PLACES }, () => placed(seen.gray, draw));
  return [
    ...slow.flatMap(({ facePx, pinPx, lengthPx }, i) => {
      const way = Math.atan2(pinPx[1] - facePx[1], pinPx[0] - facePx[0]);
      const nearPx = i % 2 === 0 ? null : beyond(facePx, way + Math.PI, lengthPx * draw.uniform(0.4, 1));
      const named = (placePx: Point, inches: number) => ({
        placePx,
        sigmaPx: HAND_PX,
        readingMm: INCH * inches,
      });
      return [
        ask('band, anywhere', seen, { of: 'clamp-band', facePx, pinPx, nearPx }),
        ask('tape, none named', seen, { of: 'tape-strokes', facePx, pinPx }),
        ask('tape, two named', seen, { of: 'tape', named: [named(facePx, 2), named(pinPx, 2 + i)] }),
      ];
    }),
    ...quick.flatMap(({ pinPx, camshaftPx, lengthPx }) => [
      ask('middle of a pin, anywhere', seen, end('clevis-pin', pinPx, lengthPx)),
      ask('middle of a camshaft, anywhere', seen, end('camshaft-end', camshaftPx as Point, lengthPx)),
    ]),
    ...quick.map(({ facePx, pinPx, lengthPx }) => painted(seen, facePx, pinPx, lengthPx)),
  ];
}

const end = (of: keyof typeof END_PART, placePx: Point, lengthPx: number): AssistQuestion => ({
  of,
  placePx,
  sigmaPx: HAND_PX,
  lengthPx,
  same: null,
});

function painted({ photo, picture }: Seen, facePx: Point, pinPx: Point, lengthPx: number): Asked {
  const pxPerMm = lengthPx / ROD_MM;
  const way: Point = [(pinPx[0] - facePx[0]) / lengthPx, (pinPx[1] - facePx[1]) / lengthPx];
  const rod: RodLine = { facePx, way, pxPerMm, halfWidthPx: HALF_ROD_MM * pxPerMm };
  const box = paintBox(rod, picture);
  const rgba = new Uint8ClampedArray(4 * box.widthPx * box.heightPx);
  for (let row = 0; row < box.heightPx; row++) {
    const from = 4 * ((box.yPx + row) * picture.widthPx + box.xPx);
    rgba.set(picture.rgba.subarray(from, from + 4 * box.widthPx), 4 * row * box.widthPx);
  }
  const judged = judgePaint({ ...box, rgba }, rod);
  const offer = { photo: photo.name, question: { rod, judged }, marks: [] };
  return { what: 'paint seen', photo: photo.name, offer: judged.sight === 'seen' ? offer : null };
}

function aboutRound(seen: Seen, draw: Draw): readonly Asked[] {
  return seen.photo.round.flatMap((thing) =>
    Array.from({ length: ROUND_PLACES }, (_, i) => [
      ...(['clevis-pin', 'camshaft-end'] as const).map((of) => {
        const placePx = beyond(
          thing.middlePx,
          draw.uniform(0, 2 * Math.PI),
          Math.abs(draw.normal(0, HAND_PX)),
        );
        const what = `middle of a ${of === 'clevis-pin' ? 'pin' : 'camshaft'}, of a round thing`;
        return ask(what, seen, end(of, placePx, thing.radiusPx / END_PART[of]));
      }),
      bandAbout(seen, thing, i % 2 === 0, draw),
    ]).flat(),
  );
}

/** As if the thing were the band: the face some way before its middle. */
function bandAbout(seen: Seen, { middlePx, radiusPx }: RoundThing, touched: boolean, draw: Draw): Asked {
  const way = draw.uniform(0, 2 * Math.PI);
  const lengthPx = (radiusPx / BAND_PART) * draw.uniform(0.6, 1.3);
  const facePx = beyond(middlePx, way, lengthPx * draw.uniform(0, 0.5));
  const pinPx = beyond(facePx, way, lengthPx);
  const nearPx = touched ? beyond(middlePx, way + Math.PI + draw.normal(0, 0.3), radiusPx) : null;
  return ask('band, at a round thing', seen, { of: 'clamp-band', facePx, pinPx, nearPx });
}

/** An end of the one photograph sought in the other, and elsewhere in the same one. */
function asSecond(known: Seen, other: Seen, draw: Draw): readonly Asked[] {
  return Array.from({ length: QUICK_PLACES }, (_, i) => {
    const [first, within] =
      i % 2 === 0 ? [known, 'in another photograph'] : [other, 'elsewhere in the same one'];
    const [there, here] = [placed(first.gray, draw), placed(other.gray, draw)];
    const of = i % 4 < 2 ? 'clevis-pin' : 'camshaft-end';
    const placePx = (of === 'clevis-pin' ? here.pinPx : here.camshaftPx) as Point;
    const marks = ({ facePx, pinPx, camshaftPx }: EndMarks) => ({ facePx, pinPx, camshaftPx });
    const same = { here: marks(here), known: marks(there), knownSigmaPx: HAND_PX };
    const question = { of, placePx, sigmaPx: HAND_PX, lengthPx: here.lengthPx, same } as const;
    return ask(`end found again ${within}`, other, question, first.gray);
  });
}

/** Marks of each photograph, sought in the next but one: neighbours in the list may show the same thing. */
export async function guessed(photos: readonly Photo[]): Promise<readonly Asked[]> {
  const guesser = await newGuesser();
  const grayAt = (i: number) => {
    const { rgba, widthPx, heightPx } = rgbaOfFile((photos[i % photos.length] as Photo).file);
    return grayOf(rgba, widthPx, heightPx);
  };
  return photos.map((photo, i) => {
    const one = grayAt(i);
    const { facePx, pinPx, camshaftPx } = placed(one, drawFrom(8000 + i));
    const marks = { face: facePx, pin: pinPx, camshaft: camshaftPx as Point };
    const found = guesser.offered({ marks, gray: () => one }, grayAt(i + 7));
    const offer = { photo: photo.name, question: marks, marks: found };
    return {
      what: 'first guess in another photograph',
      photo: photo.name,
      offer: found.length > 0 ? offer : null,
    };
  });
}

/** What the page says of them before anything is marked. */
export function qualityTable(photos: readonly Photo[]): string {
  const said = photos.map((photo) => {
    const { blur, light, glareShare } = pictureQuality(look(photo).picture, { aboutPx: null, tape: [] });
    const faults = pictureFaults({ blur, light, glareShare, scale: null, sight: null });
    const codes: readonly string[] = faults.map(({ code }) => code);
    return { name: photo.name, codes: blur ? codes : [...codes, 'too few edges to tell the blur'] };
  });
  const rows = [...new Set(said.flatMap(({ codes }) => codes))].map((code) => {
    const names = said.filter(({ codes }) => codes.includes(code)).map(({ name }) => name);
    return `| ${[code, photos.length, names.length, names.join(', ')].join(' | ')} |`;
  });
  return ['| said | photographs | of | which |', '| --- | --- | --- | --- |', ...rows].join('\n');
}

export function photoTable(asked: readonly Asked[]): string {
  const rows = [...new Set(asked.map(({ what }) => what))].map((what) => {
    const all = asked.filter((each) => each.what === what);
    const offered = all.filter(({ offer }) => offer);
    const on = [...new Set(offered.map(({ photo }) => photo))];
    const cells = [what, new Set(all.map(({ photo }) => photo)).size, all.length, offered.length];
    return `| ${[...cells, atMostText(offered.length, all.length), on.join(', ')].join(' | ')} |`;
  });
  return [
    '| asked for | photographs | asked | offered | true share at most (95 %) | on |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}
