/**
 * The digits of typefaces, drawn by ImageMagick from fonts of Debian packages; none of them is kept here.
 *
 * The packages: fonts-dejavu-core, -extra, -liberation, -freefont-ttf, -roboto-unhinted, -open-sans, -lato, -inter, -osifont, -routed-gothic, -cabin, -karla,
 * -b612, -adf-gillius, -adf-universalis, -adf-switzera, -adf-tribun, -go, -opendin, -clear-sans, -urw-base35, -bebas-neue, -cantarell, -allerta, -play,
 * -sil-andika, -crosextra-carlito, -manrope, -jura; installed, or unpacked into the folder that the variable FONTS names.
 */
import { execFileSync } from 'node:child_process';

export const GLYPHS = '0123456789F';
/** ink: 0 to 255, row by row, cut to what is inked. */
export type Glyph = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ink: Uint8Array;
};
export type Face = { readonly name: string; readonly glyphs: readonly Glyph[] };

/** What the weights are fitted on. */
export const TRAINED_FACES = [
  'LiberationSans-Bold',
  'LiberationSans-Regular',
  'LiberationSansNarrow-Bold',
  'LiberationSansNarrow-Regular',
  'LiberationSerif-Bold',
  'LiberationMono-Bold',
  'FreeSansBold',
  'FreeSerifBold',
  'FreeMonoBold',
  'Roboto-Bold',
  'Roboto-Regular',
  'Roboto-Medium',
  'RobotoCondensed-Bold',
  'RobotoCondensed-Regular',
  'OpenSans-Bold',
  'OpenSans-CondBold',
  'OpenSans-Regular',
  'GilliusADF-Bold',
  'GilliusADF-BoldCond',
  'UniversalisADFStd-Bold',
  'UniversalisADFStd-BoldCond',
  'SwitzeraADF-Bold',
  'SwitzeraADF-BoldCond',
  'SwitzeraADF-Medium',
  'C059-Bold',
  'P052-Bold',
  'URWBookman-Demi',
  'URWGothic-Demi',
  'osifont',
  'routed-gothic',
  'routed-gothic-narrow',
  'Karla-Bold',
  'Cabin-Bold',
  'Go-Bold',
  'Manrope-Bold',
  'Manrope-SemiBold',
  'Jura-Bold',
  'NimbusMonoPS-Bold',
] as const;

/** What they are tried on. */
export const HELD_BACK_FACES = [
  'DejaVuSans-Bold',
  'DejaVuSansCondensed-Bold',
  'DejaVuSans',
  'DejaVuSerif-Bold',
  'DejaVuSansMono-Bold',
  'Inter-Bold',
  'Inter-Medium',
  'Lato-Bold',
  'Lato-Regular',
  'B612-Bold',
  'B612Mono-Bold',
  'BebasNeue-Bold',
  'BebasNeue-Regular',
  'ClearSans-Bold',
  'OSP-DIN',
  'Andika-Bold',
  'Cantarell-Bold',
  'allerta_medium',
  'TribunADFStd-Bold',
  'Play-Bold',
  'Carlito-Bold',
] as const;

export function facesOf(names: readonly string[]): readonly Face[] {
  const folder = process.env.FONTS ?? '/usr/share/fonts';
  const files = execFileSync('find', [folder, '/usr/share/fonts', '-name', '*.[ot]tf'], { encoding: 'utf8' });
  return names.map((name) => {
    const file = files.split('\n').find((each) => new RegExp(`/${name}\\.[ot]tf$`).test(each));
    if (!file) throw new Error(`No file of ${name}: FONTS names the folder where the packages are unpacked`);
    return { name, glyphs: [...GLYPHS].map((glyph) => glyphOf(file, glyph)) };
  });
}

function glyphOf(file: string, glyph: string): Glyph {
  const args = ['-background', 'black', '-fill', 'white', '-font', file, '-pointsize', '96'];
  const pgm = execFileSync('convert', [
    ...args,
    `label:${glyph}`,
    '-trim',
    '+repage',
    '-depth',
    '8',
    'pgm:-',
  ]);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error(`${file} has no ${glyph}`);
  const [widthPx, heightPx] = [Number(head[1]), Number(head[2])];
  return { widthPx, heightPx, ink: new Uint8Array(pgm.subarray(head[0].length)) };
}
