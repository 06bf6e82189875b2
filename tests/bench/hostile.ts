/** npm run bench:hostile: twenty thousand mutated packages and records through the doors; writes its table into docs/package.md. */
import { readFileSync, writeFileSync } from 'node:fs';
import { sealHistory } from '../../src/record/history-chain.ts';
import { recordText } from '../../src/record/save-record.ts';
import {
  MEASURED,
  newKeyPair,
  packageBytes,
  REFUSED,
  recheckBytes,
  sha256,
  smallRecord,
} from '../evidence/small-package.ts';
import { type Outcome, packageTrial, recordTrial, type Trial } from '../recheck/hostile-trials.ts';
import { BYTE_MUTATIONS, JSON_MUTATIONS } from '../recheck/mutations.ts';

const PACKAGES_EACH = 1000;
const RECORDS_EACH = 5000;
const PAGE = new URL('../../docs/package.md', import.meta.url);
const [BEGIN, END] = ['<!-- hostile:begin -->', '<!-- hostile:end -->'];
const OUTCOMES: readonly Outcome[] = ['refused', 'nothing changed', 'accepted', 'crashed'];

const record = smallRecord([REFUSED]);
const bytes = await packageBytes({ record, keys: await newKeyPair() });
const { fingerprint } = (await recheckBytes(bytes)).signature;
const stranger = await newKeyPair();
const rows: string[] = [];

for (const mutation of [...BYTE_MUTATIONS, ...JSON_MUTATIONS]) {
  const trials: Trial[] = [];
  for (let seed = 0; seed < PACKAGES_EACH; seed++)
    trials.push(await packageTrial(bytes, mutation, seed, { fingerprint, stranger }));
  rows.push(rowOf(`package, ${mutation}`, trials));
}
const unasked: Trial[] = [];
for (let seed = 0; seed < PACKAGES_EACH; seed++)
  unasked.push(
    await packageTrial(bytes, 'value replaced, signed anew', seed, { fingerprint: null, stranger }),
  );
rows.push(rowOf('package, value replaced, signed anew, and no key asked for', unasked));

const text = recordText(
  sealHistory(smallRecord([REFUSED, MEASURED]), { at: '2026-05-12T17:00:00.000Z', by: 'R. Ames' }, sha256),
);
for (const mutation of ['text changed', 'value replaced'] as const) {
  // Measuring takes a tenth of a second: every twentieth that opens is measured as well.
  const trials = Array.from({ length: RECORDS_EACH }, (_v, seed) =>
    recordTrial(text, mutation, seed, seed % 20 === 0),
  );
  rows.push(rowOf(`sealed record, ${mutation}`, trials));
}

const table = [
  `| what | tried | ${OUTCOMES.join(' | ')} |`,
  `| --- | --- |${' --- |'.repeat(OUTCOMES.length)}`,
  ...rows,
];
const page = readFileSync(PAGE, 'utf8');
const [before, rest] = page.split(BEGIN);
const after = rest?.split(END)[1];
if (before === undefined || after === undefined)
  throw new Error('docs/package.md lacks the place for the table');
writeFileSync(PAGE, `${before}${BEGIN}\n${table.join('\n')}\n${END}${after}`);

function rowOf(what: string, trials: readonly Trial[]): string {
  const counts = OUTCOMES.map((outcome) => trials.filter((trial) => trial.outcome === outcome).length);
  for (const { outcome, seed, codes } of trials)
    if (outcome === 'crashed' || outcome === 'accepted') console.error(what, outcome, seed, codes.join(' '));
  console.error(what, counts.join(' '));
  return `| ${what} | ${trials.length} | ${counts.join(' | ')} |`;
}
