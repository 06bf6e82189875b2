/** What people call the codecs, by the names that the clip reader uses; another is named as the file itself names it. */
const NAMES: Readonly<Record<string, string>> = {
  avc: 'H.264',
  hevc: 'HEVC (H.265)',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
};

export function codecName(codec: string | null, inFile: string | number | Uint8Array | null): string {
  if (codec !== null) return NAMES[codec] ?? codec;
  return typeof inFile === 'string' ? inFile.slice(0, 64) : 'unknown';
}
