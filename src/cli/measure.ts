/** npm run --silent measure -- RECORD.json ...: measures what the records hold and prints one JSON array; 2 for bad input. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type MeasuredRow, measuredRows } from '../record/measured-rows.ts';
import { openRecord } from '../record/open-record.ts';
import { recordFailureLine } from './record-failure-line.ts';

const BAD_INPUT = 2;
/** npm runs its scripts in the project's folder; a path is meant from where the person stands. */
const standing = process.env.INIT_CWD ?? process.cwd();

const paths = process.argv.slice(2);
if (paths.length === 0) refuse('Name one or more records: npm run --silent measure -- RECORD.json ...');
const rows = paths.flatMap(measuredFile);
process.stdout.write(`${JSON.stringify(rows, null, 2)}\n`);

function measuredFile(path: string): MeasuredRow[] {
  const record = openRecord(fileText(path));
  return record.ok ? measuredRows(record.value) : refuse(`${path}: ${recordFailureLine(record.failure)}.`);
}

function fileText(path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(resolve(standing, path)));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'ENOENT') return refuse(`${path}: no such file.`);
    if (code === 'EISDIR') return refuse(`${path}: a folder, not a record.`);
    if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA') return refuse(`${path}: not a text file in UTF-8.`);
    return refuse(`${path}: cannot be read (${code || String(error)}).`);
  }
}

function refuse(line: string): never {
  process.stderr.write(`${line.replace(/\s+/g, ' ')}\n`);
  process.exit(BAD_INPUT);
}
