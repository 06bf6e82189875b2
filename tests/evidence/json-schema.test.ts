import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { packageSchemaText } from '../../src/evidence/json-schema.ts';

test('the published schema is the one that packages are checked by: npm run schema writes it', () => {
  expect(readFileSync('docs/package.schema.json', 'utf8')).toBe(packageSchemaText());
});

test('the published schema refuses unknown keys in every object', () => {
  const objects: { additionalProperties?: unknown }[] = [];
  JSON.parse(packageSchemaText(), (_key, value) => {
    if (value?.type === 'object') objects.push(value);
    return value;
  });
  expect(objects.length).toBeGreaterThan(8);
  expect(objects.every((object) => object.additionalProperties === false)).toBe(true);
});
