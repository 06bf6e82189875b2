import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { recordSchemaText } from '../../src/record/json-schema.ts';

test('the published schema is the one that records are checked by: npm run schema writes it', () => {
  expect(readFileSync('docs/record.schema.json', 'utf8')).toBe(recordSchemaText());
});

test('the published schema refuses unknown keys in every object', () => {
  const objects: { additionalProperties?: unknown }[] = [];
  JSON.parse(recordSchemaText(), (_key, value) => {
    if (value?.type === 'object') objects.push(value);
    return value;
  });
  expect(objects.length).toBeGreaterThan(15);
  expect(objects.every((object) => object.additionalProperties === false)).toBe(true);
});
