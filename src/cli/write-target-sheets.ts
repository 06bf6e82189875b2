/** npm run target: writes the pages of the printed target, as the app offers them for printing. */
import { writeFileSync } from 'node:fs';
import { PAPERS } from '../references/paper.ts';
import { targetSheet } from '../references/target-sheet.ts';

for (const paper of PAPERS)
  writeFileSync(new URL(`../../public/printed-target-${paper}.svg`, import.meta.url), targetSheet(paper));
