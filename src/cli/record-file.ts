/** A record named on the command line, or one line on why not. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { openRecord } from '../record/open-record.ts';
import type { InspectionRecord } from '../record/record.ts';
import { refuse, standing } from './command-line.ts';
import { recordFailureLine } from './record-failure-line.ts';

export function recordOfFile(path: string): InspectionRecord {
  const record = openRecord(fileText(path));
  return record.ok ? record.value : refuse(`${path}: ${recordFailureLine(record.failure)}.`);
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
