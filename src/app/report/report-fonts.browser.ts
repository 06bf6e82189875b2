/** The typeface of the page, to be carried by the file: else it would look different everywhere. */
import regular from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-400-normal.woff2?url';
import semibold from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-600-normal.woff2?url';
import type { ReportFonts } from '../../evidence/report-html.ts';
import { dataUri } from './data-uri.browser.ts';

/** Without those that cannot be had: the file then falls back on a typeface that is there. */
export async function reportFonts(): Promise<ReportFonts> {
  const wanted = [
    { weight: 400, address: regular },
    { weight: 600, address: semibold },
  ] as const;
  const had = await Promise.all(
    wanted.map(async ({ weight, address }) => {
      const answer = await fetch(address).catch(() => null);
      if (!answer?.ok) return null;
      const bytes = await answer.arrayBuffer();
      return { weight, dataUri: await dataUri(new Blob([bytes], { type: 'font/woff2' })) };
    }),
  );
  return had.filter((font) => font !== null);
}
