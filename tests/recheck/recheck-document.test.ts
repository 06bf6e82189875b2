import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { resultsOf } from '../../src/evidence/results.ts';
import { type KeyPair, sign } from '../../src/evidence/signature.ts';
import { checkDocument } from '../../src/recheck/check-document.ts';
import { recheckSchemaText } from '../../src/recheck/json-schema.ts';
import type { Recheck } from '../../src/recheck/recheck.ts';
import {
  bytesOfDocument,
  type RecheckDocument,
  recheckDocument,
} from '../../src/recheck/recheck-document.ts';
import { comparisonsOf } from '../../src/recheck/second-reading.ts';
import {
  MEASURED,
  newKeyPair,
  packageBytes,
  recheckBytes,
  smallRecord,
  subtle,
} from '../evidence/small-package.ts';

let auditor: KeyPair;
let found: Recheck & { readonly manifestSha256: string };
let document: RecheckDocument;
beforeAll(async () => {
  auditor = await newKeyPair();
  const record = smallRecord([MEASURED]);
  const recheck = await recheckBytes(await packageBytes({ record, keys: await newKeyPair() }));
  found = { ...recheck, manifestSha256: recheck.manifestSha256 ?? '' };
  const comparisons = comparisonsOf(recheck.recorded ?? [], resultsOf(record, '0.1.0'));
  document = recheckDocument(
    found,
    { record, comparisons },
    { madeAt: '2026-05-14T08:00:00.000Z', engine: '0.1.0' },
  );
});

async function signed(said: object): Promise<string> {
  return JSON.stringify({
    document: said,
    signature: await sign(subtle, auditor, bytesOfDocument(said), 'recheck'),
  });
}

test('what an auditor signed can be held against the package, and done again', async () => {
  const checked = await checkDocument(await signed(document), found, subtle);
  expect(checked).toMatchObject({
    ok: true,
    value: { holds: true, otherAnswers: [], secondReading: { doNotAgree: 0, notReproduced: 0 } },
  });
  expect(checked.ok && checked.value.secondReading?.agree).toBeGreaterThan(2);
});

test('a word of it changed does not fit; signed anew by somebody, it says so by its key and by what it cannot reproduce', async () => {
  const text = await signed(document);
  const changed = text.replace('"holds":true', '"holds":false');
  expect(changed).not.toBe(text);
  expect(await checkDocument(changed, found, subtle)).toEqual({
    ok: false,
    failure: { code: 'document/does-not-fit' },
  });
  const [first, ...others] = document.secondReading?.comparisons ?? [];
  if (!first) throw new Error('no comparison');
  const invented = {
    ...document,
    answers: { ...document.answers, results: 'no' },
    secondReading: {
      ...document.secondReading,
      comparisons: [{ ...first, second: first.second + 1 }, ...others],
    },
  };
  expect(await checkDocument(await signed(invented), found, subtle)).toMatchObject({
    ok: true,
    value: { otherAnswers: ['results'], secondReading: { notReproduced: 1 } },
  });
});

test('of another package, of another kind, or no document: each is told', async () => {
  const other = { ...found, manifestSha256: 'ab'.repeat(32) };
  expect(await checkDocument(await signed(document), other, subtle)).toMatchObject({
    failure: { code: 'document/other-package' },
  });
  const signature = await sign(subtle, auditor, bytesOfDocument(document));
  expect(await checkDocument(JSON.stringify({ document, signature }), found, subtle)).toMatchObject({
    failure: { code: 'document/does-not-fit' },
  });
  for (const text of ['', '[]', '{"document":{}}', await signed({ ...document, more: 1 })])
    expect(await checkDocument(text, found, subtle)).toMatchObject({
      failure: { code: 'document/not-readable' },
    });
});

test('the published schema is the one that documents are checked by: npm run schema writes it', () => {
  expect(readFileSync('docs/recheck.schema.json', 'utf8')).toBe(recheckSchemaText());
});

test('what did not hold stands in it with its place', async () => {
  const bytes = await packageBytes({ record: smallRecord([MEASURED]), keys: await newKeyPair() });
  bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
  const broken = await recheckBytes(bytes);
  const said = recheckDocument({ ...broken, manifestSha256: broken.manifestSha256 ?? '' }, null, {
    madeAt: '2026-05-14T08:00:00.000Z',
    engine: '0.1.0',
  });
  expect(said).toMatchObject({ holds: false, answers: { container: 'no', signature: 'yes' } });
  expect(said.differences.find(({ code }) => code === 'container/checksum')?.details).toMatch(
    /"path":"[a-z]+/,
  );
});
