import { expect, test } from 'vitest';
import { openRuleSet } from '../../src/finding/rule-set.ts';
import usFile from '../../src/finding/rule-sets/us-49-cfr-393-47.json' with { type: 'json' };
import { findRuleSet, RULE_SETS } from '../../src/finding/rule-sets.ts';

type File = typeof usFile;

function changed(change: (file: File) => void): unknown {
  const file = structuredClone(usFile);
  change(file);
  return file;
}

function row(file: File, index: number) {
  const found = file.rows[index];
  if (!found) throw new Error('no such row');
  return found;
}

test.each<[string, (file: File) => void]>([
  [
    'an inch that is no fraction of a tape',
    (file) => Object.assign(row(file, 0), { outsideDiameterIn: '4 1/3' }),
  ],
  ['a decimal inch', (file) => Object.assign(row(file, 0), { outsideDiameterIn: '4.5' })],
  ['a key that it does not know', (file) => Object.assign(row(file, 0), { colour: 'red' })],
  [
    'two rows for one chamber, each from a source of its own',
    (file) => {
      file.rows.push(structuredClone(row(file, 0)));
      Object.assign(row(file, 0).limits[0] ?? {}, { sources: ['ecfr-2012'] });
      Object.assign(file.rows.at(-1)?.limits[0] ?? {}, { sources: ['ecfr-2021'] });
    },
  ],
  [
    'a row without a standard limit',
    (file) => Object.assign(row(file, 0).limits[0] ?? {}, { strokeClass: 'long' }),
  ],
  ['one limit twice from one source', (file) => double(row(file, 0).limits)],
  [
    'a source that is not named',
    (file) => Object.assign(row(file, 0).limits[0] ?? {}, { sources: ['hearsay'] }),
  ],
  ['another format', (file) => Object.assign(file, { format: 'something-else' })],
  ['two pressure ranges for one procedure', (file) => double(file.pressure.ranges)],
  ['a procedure without a pressure range', (file) => file.pressure.ranges.splice(0, 1)],
  [
    'a pressure range from hearsay',
    (file) => Object.assign(file.pressure.ranges[0] ?? {}, { source: 'hearsay' }),
  ],
  ['a rule that is missing', (file) => file.rules.splice(0, 1)],
  ['one rule twice', (file) => double(file.rules)],
  ['a rule from hearsay', (file) => Object.assign(file.rules[0] ?? {}, { sources: ['hearsay'] })],
  ['free stroke from hearsay', (file) => Object.assign(file.freeStroke, { source: 'hearsay' })],
  ['a share above one', (file) => Object.assign(file.unlisted, { shareOfRatedStroke: 1.2 })],
])('refuses a rule set with %s', (_what, change) => {
  expect(openRuleSet(changed(change))).toMatchObject({ ok: false, failure: { code: 'rule-set/invalid' } });
});

function double(list: unknown[]): void {
  list.push(structuredClone(list[0]));
}

test('opens the rule set that comes with the program, and finds it by its id', () => {
  expect(openRuleSet(usFile).ok).toBe(true);
  expect(RULE_SETS).toHaveLength(1);
  expect(findRuleSet('us-49-cfr-393-47')).toMatchObject({ ok: true });
  expect(findRuleSet('elsewhere')).toEqual({
    ok: false,
    failure: { code: 'rule-set/unknown', ruleSetId: 'elsewhere' },
  });
});

test('every source carries its edition and how well it is known, and the table its dates', () => {
  for (const { sources } of RULE_SETS) {
    expect(sources.find((source) => source.id === 'ecfr-2012')?.publishedOn).toBe('2012-08-06');
    expect(sources.find((source) => source.id === 'ecfr-2012')?.inForceFrom).toBe('2012-09-05');
    expect(sources.find((source) => source.id === 'ecfr-2021')?.publishedOn).toBe('2021-10-14');
  }
});
