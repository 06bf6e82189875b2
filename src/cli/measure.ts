/** npm run --silent measure -- RECORD.json ...: measures what the records hold and prints one JSON array; 2 for bad input. */
import { measuredRows } from '../record/measured-rows.ts';
import { refuse } from './command-line.ts';
import { recordOfFile } from './record-file.ts';

const paths = process.argv.slice(2);
if (paths.length === 0) refuse('Name one or more records: npm run --silent measure -- RECORD.json ...');
const rows = paths.flatMap((path) => measuredRows(recordOfFile(path)));
process.stdout.write(`${JSON.stringify(rows, null, 2)}\n`);
