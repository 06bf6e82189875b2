/**
 * The paper that people of a place print on.
 * Source   Unicode CLDR, supplemental measurement data, paper size US-Letter (regions from memory).
 */
import type { Paper } from '../../references/paper.ts';

const LETTER_REGIONS = 'BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' ');

export function paperOfLocale(language: string): Paper {
  const region = new Intl.Locale(language).maximize().region ?? '';
  return LETTER_REGIONS.includes(region) ? 'letter' : 'a4';
}
