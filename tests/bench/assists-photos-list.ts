/**
 * Photographs of Debian packages, none of them of a brake: opencv-doc, mate-backgrounds, python3-skimage, python3-sklearn,
 * tuxpaint-stamps-default. PHOTO_ROOT: where the packages were unpacked (dpkg-deb -x), for those that are not installed.
 */
import { existsSync } from 'node:fs';
import type { Point } from '../../src/vision/point.ts';

/** Coin, cap, cup, pot, wheel as it is seen: middle and half the greatest width, px. */
export type RoundThing = { readonly middlePx: Point; readonly radiusPx: number };
export type Photo = { readonly name: string; readonly file: string; readonly round: readonly RoundThing[] };

const FOLDERS = {
  opencv: 'usr/share/doc/opencv-doc/examples',
  skimage: 'usr/lib/python3/dist-packages/skimage/data',
  sklearn: 'usr/lib/python3/dist-packages/sklearn/datasets/images',
  mate: 'usr/share/backgrounds/mate/nature',
  stamps: 'usr/share/tuxpaint/stamps/vehicles',
} as const;
type Folder = keyof typeof FOLDERS;

const numbered = (name: string, numbers: readonly number[]) =>
  numbers.map((n) => `data/${name}${String(n).padStart(2, '0')}.jpg`);
const jpgs = (names: string) => names.split(' ').map((name) => `${name}.jpg`);
const pngs = (names: string) => names.split(' ').map((name) => `${name}.png`);

const FILES: Readonly<Record<Folder, readonly string[]>> = {
  opencv: [
    ...jpgs(
      'aero1 aero3 aloeL aloeR apple baboon blox board building butterfly ela_original fruits home leuvenA leuvenB licenseplate_motion orange squirrel_cls stuff text_defocus text_motion',
    ).map((name) => `data/${name}`),
    ...pngs('box box_in_scene chicky_512 graf1 graf3 rubberwhale1 rubberwhale2 smarties sudoku').map(
      (name) => `data/${name}`,
    ),
    ...numbered('left', [1, 3, 5, 7, 9, 12, 14]),
    ...numbered('right', [2, 4, 6, 8, 11, 13]),
    'alphamat/input_images/plant.jpg',
    'dnn_superres/butterfly.png',
    ...jpgs('hfs/data/000 hfs/data/001 hfs/data/002'),
    ...[1, 2, 3, 4, 5, 6].map((n) => `text/scenetext0${n}.jpg`),
  ],
  skimage: [
    ...pngs(
      'brick camera chelsea clock_motion coffee coins grass gravel moon motorcycle_left motorcycle_right',
    ),
    ...pngs('page text'),
    'rocket.jpg',
  ],
  sklearn: jpgs('china flower'),
  mate: jpgs(
    'Aqua Blinds Dune FreshFlower Garden GreenMeadow LadyBird RainDrops Storm TwoWings Wood YellowFlower',
  ),
  stamps: ['wheel_tractor.png'],
};

const round = (x: number, y: number, radiusPx: number): RoundThing => ({ middlePx: [x, y], radiusPx });

/** Placed by eye. */
const ROUND: Readonly<Record<string, readonly RoundThing[]>> = {
  'board.jpg': [round(40, 180, 32), round(145, 162, 22), round(192, 251, 19)],
  'stuff.jpg': [round(396, 185, 58), round(228, 58, 36), round(210, 307, 20)],
  'fruits.jpg': [round(431, 383, 100)],
  'aloeL.jpg': [round(886, 850, 175)],
  'plant.jpg': [round(277, 226, 84), round(121, 212, 48)],
  'rubberwhale1.png': [round(128, 352, 55)],
  'coffee.png': [round(291, 111, 118), round(279, 207, 200), round(286, 160, 80)],
  'motorcycle_left.png': [round(205, 318, 82), round(597, 356, 85), round(534, 156, 28), round(369, 342, 26)],
  'coins.png': [round(336, 43, 29), round(347, 186, 32), round(46, 260, 28), round(157, 50, 23)],
  'wheel_tractor.png': [
    round(250, 261, 238),
    round(250, 261, 150),
    round(250, 261, 110),
    round(250, 261, 36),
  ],
};

/** Those that are here. */
export function photosHere(): readonly Photo[] {
  const root = process.env.PHOTO_ROOT ?? '';
  return (Object.keys(FOLDERS) as Folder[]).flatMap((folder) =>
    FILES[folder].flatMap((path) => {
      const name = path.split('/').at(-1) as string;
      const file = [`${root}/`, '/'].map((at) => `${at}${FOLDERS[folder]}/${path}`).find(existsSync);
      return file ? [{ name, file, round: ROUND[name] ?? [] }] : [];
    }),
  );
}
