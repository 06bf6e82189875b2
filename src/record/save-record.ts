import { type InspectionRecord, recordSchema } from './record.ts';

/**
 * The record as text: keys always in the order of the schema, so that equal records are equal texts; a row of numbers on one line, since the track
 * of a followed clip is mostly such rows. A record that is not valid throws.
 */
export function recordText(record: InspectionRecord): string {
  const text = JSON.stringify(recordSchema.parse(record), null, 2);
  return `${text.replace(NUMBERS, (row) => row.replace(/\n */g, ''))}\n`;
}

/** Brackets about numbers, nulls and space alone. What people typed may look so, but has no line breaks: these are written as \n. */
const NUMBERS = /\[[-+.\denul,\s]+\]/g;
