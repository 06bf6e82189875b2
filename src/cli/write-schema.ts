/** npm run schema: writes the record's JSON Schema to docs/. */
import { writeFileSync } from 'node:fs';
import { recordSchemaText } from '../record/json-schema.ts';

writeFileSync(new URL('../../docs/record.schema.json', import.meta.url), recordSchemaText());
