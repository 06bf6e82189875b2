import { readFileSync } from 'node:fs';
import { openRecord } from '../../src/record/open-record.ts';
import type { InspectionRecord } from '../../src/record/record.ts';

export const EXAMPLE_PATH = 'tests/fixtures/records/version-7.json';

export function exampleText(): string {
  return readFileSync(EXAMPLE_PATH, 'utf8');
}

export function exampleRecord(): InspectionRecord {
  const record = openRecord(exampleText());
  if (!record.ok) throw new Error(JSON.stringify(record.failure));
  return record.value;
}
