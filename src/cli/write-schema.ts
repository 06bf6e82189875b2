/** npm run schema: writes the JSON Schemas of the record, of a package's documents and of a recheck to docs/. */
import { writeFileSync } from 'node:fs';
import { packageSchemaText } from '../evidence/json-schema.ts';
import { recheckSchemaText } from '../recheck/json-schema.ts';
import { recordSchemaText } from '../record/json-schema.ts';

writeFileSync(new URL('../../docs/record.schema.json', import.meta.url), recordSchemaText());
writeFileSync(new URL('../../docs/package.schema.json', import.meta.url), packageSchemaText());
writeFileSync(new URL('../../docs/recheck.schema.json', import.meta.url), recheckSchemaText());
