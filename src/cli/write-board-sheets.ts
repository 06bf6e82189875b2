/** npm run board: writes the pages of the calibration board, as the app offers them for printing. */
import { writeFileSync } from 'node:fs';
import { boardSheet } from '../references/board-sheet.ts';
import { PAPERS, type Paper } from '../references/target-sheet.ts';

for (const paper of Object.keys(PAPERS) as Paper[])
  writeFileSync(new URL(`../../public/calibration-board-${paper}.svg`, import.meta.url), boardSheet(paper));
