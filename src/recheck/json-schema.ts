import { definition } from '../evidence/json-schema.ts';
import { RECHECK_FORMAT, RECHECK_VERSION, recheckFileSchema } from './recheck-document.ts';

/** The shape of a recheck's document as published JSON Schema text; the record in it has a schema of its own. */
export function recheckSchemaText(): string {
  const schema = {
    title: `${RECHECK_FORMAT}, version ${RECHECK_VERSION}`,
    description:
      'A recheck of an evidence package, signed by who made it. The record in it: record.schema.json.',
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    ...definition(recheckFileSchema),
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}
