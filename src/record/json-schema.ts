import { z } from 'zod';
import { RECORD_FORMAT, RECORD_VERSION, recordSchema } from './record.ts';

/** The record's shape as published JSON Schema text. What its parts say about each other a schema cannot tell: cross-checks.ts. */
export function recordSchemaText(): string {
  const schema = {
    title: `${RECORD_FORMAT}, version ${RECORD_VERSION}`,
    description:
      'What was entered for one inspection. Lengths in millimetres, image points in pixels of the upright picture. ' +
      'Beyond this schema: ids are unique, every view names a capture of the record, a view of a clip has a frame ' +
      'within the clip and a view of a photo has none, and a measurement has at most one view of each state.',
    ...z.toJSONSchema(recordSchema, {
      io: 'input',
      // Our types are readonly; in JSON Schema the word says something else.
      override: ({ jsonSchema }) => delete jsonSchema.readOnly,
    }),
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}
