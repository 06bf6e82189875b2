import { z } from 'zod';
import { manifestSchema, PACKAGE_FORMAT, PACKAGE_VERSION } from './manifest.ts';
import { resultsSchema } from './results.ts';
import { signatureSchema } from './signature.ts';

/** The shape of a package's own documents as published JSON Schema text; the record in it has a schema of its own. */
export function packageSchemaText(): string {
  const schema = {
    title: `${PACKAGE_FORMAT}, version ${PACKAGE_VERSION}`,
    description:
      'The documents of an evidence package: manifest.json, signature.json, results.json. Beyond this schema: paths of the ' +
      'manifest are unlike each other and fit their roles, the record comes first, the results second.',
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $defs: {
      manifest: definition(manifestSchema),
      signature: definition(signatureSchema),
      results: definition(resultsSchema),
    },
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}

/** One document's shape, without the line that says which JSON Schema it is. */
export function definition(of: z.ZodType): object {
  const { $schema: _schema, ...shape } = z.toJSONSchema(of, {
    io: 'input',
    // Our types are readonly; in JSON Schema the word says something else.
    override: ({ jsonSchema }) => delete jsonSchema.readOnly,
  });
  return shape;
}
