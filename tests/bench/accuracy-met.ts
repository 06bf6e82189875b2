/** What the rows meet of what is asked, in sentences. */
import type { Row } from './accuracy-summary.ts';
import { ASKED, HELD_FROM, HELD_TO, MOST_ANGLE_DEG, mm } from './accuracy-tables.ts';

const HANDS = [
  { way: 'plain', cameraStill: false, words: 'plain, hand-held' },
  { way: 'plain', cameraStill: true, words: 'plain, camera still' },
  { way: 'careful', cameraStill: false, words: 'careful, hand-held' },
  { way: 'careful', cameraStill: true, words: 'careful, camera still' },
  { way: 'calibrated', cameraStill: false, words: 'calibrated, hand-held' },
  { way: 'calibrated', cameraStill: true, words: 'calibrated, camera still' },
] as const;

export function metText(rows: readonly Row[]): string {
  const lines = ASKED.flatMap(({ sigmaPx, errorMm, inches }) =>
    HANDS.flatMap(({ way, cameraStill, words }) => {
      const these = rows.filter(
        (r) => r.sigmaPx === sigmaPx && r.way === way && r.cameraStill === cameraStill,
      );
      if (these.length === 0) return [];
      const met = these.filter((r) => r.error95Mm <= errorMm);
      const not = these.filter((r) => r.error95Mm > errorMm);
      const listed = (some: readonly Row[]) =>
        some.length === 0 ? 'none' : some.map((r) => `${r.reference} (${mm(r.error95Mm)})`).join(', ');
      return `- ${inches} at ${sigmaPx} px, ${words}: met by ${listed(met)}; not by ${listed(not)}.`;
    }),
  );
  return [...lines, heldLine(rows), angleLine(rows)].join('\n');
}

/** Beyond the limits by more than twice the scatter of a share from so many scenes. */
function heldLine(rows: readonly Row[]): string {
  const slack = (row: Row) => 2 * Math.sqrt((0.05 * 0.95) / row.scenes);
  const low = rows.filter((row) => row.held < HELD_FROM - slack(row));
  const high = rows.filter((row) => row.held > HELD_TO + slack(row));
  const within = rows.filter((row) => row.held >= HELD_FROM && row.held <= HELD_TO).length;
  const listed = (some: readonly Row[]) =>
    some.length === 0 ? 'none' : some.map((r) => `${r.name} (${(100 * r.held).toFixed(1)} %)`).join('; ');
  return `- U95 holds the truth in ${100 * HELD_FROM} to ${100 * HELD_TO} % of cases in ${within} of ${rows.length} rows. Below by more than the luck of so many scenes: ${listed(low)}. Above: ${listed(high)}.`;
}

function angleLine(rows: readonly Row[]): string {
  const met = rows.filter((row) => row.angleError95Deg <= MOST_ANGLE_DEG);
  const listed = met.map((r) => `${r.name} (${mm(r.angleError95Deg)})`).join('; ');
  return `- Arm angle within ${MOST_ANGLE_DEG} degree for 95 %: ${met.length} of ${rows.length} rows: ${listed || 'none'}.`;
}
