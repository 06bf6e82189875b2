/**
 * npm run bench:sizes: how well the clamp band's diameter and the arm's length come out of the marks, on simulated wheel ends of a
 * type 30 with an arm of 5 1/2 in, where the diameter that was given is right and where it is another type's. Writes docs/rules.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { measure } from '../../src/measurement/measure.ts';
import type { WithU } from '../../src/measurement/measured.ts';
import type { Sizes } from '../../src/measurement/sizes-from-marks.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

const PAIRS = Number(process.argv[2] ?? 50);
const PLACE = 'docs/rules.md';
const BEGIN = '<!-- table: npm run bench:sizes -->';
const END = '<!-- end of table -->';
const BAND_MM = 8.09375 * 25.4;
const ARM_MM = 5.5 * 25.4;

type Row = { readonly name: string; readonly reference: ReferenceKind; readonly offMm: number };

const ROWS: readonly Row[] = [
  { name: 'tape and band', reference: 'tape+band', offMm: 0 },
  { name: 'tape and band, given as type 24', reference: 'tape+band', offMm: -22.2 },
  { name: 'tape and band, given 11 mm too much', reference: 'tape+band', offMm: 11 },
  { name: 'band alone', reference: 'clamp-band', offMm: 0 },
  { name: 'tape alone', reference: 'tape', offMm: 0 },
];

const lines = ROWS.map(tableLine);
const page = readFileSync(PLACE, 'utf8');
const [before, after] = [page.split(BEGIN)[0] ?? '', page.split(END)[1] ?? ''];
const head = [
  '| references | band measured in | true one inside U95 | given one noticed as wrong | U95 median, most (mm) | arm measured in | true one inside U95 | U95 median (mm) |',
  '| --- | --- | --- | --- | --- | --- | --- | --- |',
];
writeFileSync(PLACE, `${before}${BEGIN}\n\n${[...head, ...lines].join('\n')}\n\n${END}${after}`);

function tableLine({ name, reference, offMm }: Row): string {
  const found = Array.from({ length: PAIRS }, (_, i) => sizesOf(reference, i + 1, offMm)).filter(
    (sizes) => sizes !== null,
  );
  const bands = found.flatMap(({ bandDiameterMm }) => bandDiameterMm ?? []);
  const arms = found.flatMap(({ armLengthMm }) => armLengthMm ?? []);
  const noticed = bands.filter(({ value, U95 }) => Math.abs(value - BAND_MM - offMm) > Math.hypot(U95, 1.96));
  const [bandU, armU] = [bands, arms].map((list) => list.map(({ U95 }) => U95).sort((a, b) => a - b));
  const cells = [
    name,
    `${bands.length} of ${found.length}`,
    bands.length > 0 ? `${inside(bands, BAND_MM)}` : '',
    bands.length > 0 ? `${noticed.length}` : '',
    bands.length > 0 ? `${middle(bandU)}, ${bandU?.at(-1)?.toFixed(1)}` : '',
    `${arms.length} of ${found.length}`,
    arms.length > 0 ? `${inside(arms, ARM_MM)}` : '',
    arms.length > 0 ? middle(armU) : '',
  ];
  console.log(cells.join(' | '));
  return `| ${cells.join(' | ')} |`;
}

function sizesOf(reference: ReferenceKind, seed: number, offMm: number): Sizes | null {
  const { input } = simulate({ seed, reference, sigmaPx: 1, camshaft: true, bandMm: BAND_MM, armMm: ARM_MM });
  const { clampBand } = input.references;
  const given = clampBand && { ...clampBand, diameterMm: clampBand.diameterMm + offMm };
  const measured = measure({ ...input, references: { ...input.references, clampBand: given } });
  return measured.ok ? measured.value.sizes : null;
}

function inside(list: readonly WithU[], truthMm: number): number {
  return list.filter(({ value, U95 }) => Math.abs(value - truthMm) <= U95).length;
}

function middle(sorted: readonly number[] = []): string {
  return sorted[Math.floor(sorted.length / 2)]?.toFixed(1) ?? '';
}
