/** npm run board: writes the pages of the calibration board, as the app offers them for printing. */
import { writeFileSync } from 'node:fs';
import { boardSheet } from '../references/board-sheet.ts';
import { PAPERS } from '../references/paper.ts';

for (const paper of PAPERS)
  writeFileSync(new URL(`../../public/calibration-board-${paper}.svg`, import.meta.url), boardSheet(paper));
