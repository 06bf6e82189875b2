import { type InspectionRecord, recordSchema } from './record.ts';

/** The record as text: keys always in the order of the schema, so that equal records are equal texts. A record that is not valid throws. */
export function recordText(record: InspectionRecord): string {
  return `${JSON.stringify(recordSchema.parse(record), null, 2)}\n`;
}
