// What points where: an adjuster maker's service manual (excerpt). Free stroke in range and applied stroke long: foundation brake.
// Free stroke long: adjuster or its mounting. Free stroke short: set too tight or dragging.
import { expect, test } from 'vitest';
import { CHECK_RULES } from '../../src/finding/cause-rules.ts';
import { causeSearch } from '../../src/finding/cause-search.ts';
import { CAUSE_CHECKS, CAUSES } from '../../src/finding/causes.ts';

const FOUNDATION = [
  'clevis-free-of-play',
  'chamber-mounting-tight',
  'camshaft-free-of-play',
  'camshaft-turns-freely',
  'linings-thick-enough',
  'drum-within-size',
  'shoe-springs-whole',
];
const ADJUSTER = ['adjuster-turns', 'adjuster-mounting-tight', 'adjuster-holds'];
const nextOf = (search: ReturnType<typeof causeSearch>) => search.next.map(({ check }) => check);

test('free stroke in range and applied stroke long: the foundation brake first', () => {
  const next = nextOf(causeSearch(['stroke-over', 'free-stroke-in-range'], []));
  expect(next).toHaveLength(4);
  expect(next.every((check) => FOUNDATION.includes(check))).toBe(true);
});

test('free stroke long, or an adjuster that does not take up: the adjuster and its mounting first', () => {
  for (const evidence of ['free-stroke-long', 'adjuster-does-not-take-up'] as const) {
    const next = nextOf(causeSearch(['stroke-over', evidence], []));
    expect(next.slice(0, 3).every((check) => ADJUSTER.includes(check))).toBe(true);
  }
});

test('over the limit and nothing else known: the usual order, and why is left open', () => {
  const search = causeSearch(['stroke-over'], []);
  expect(nextOf(search)).toEqual(CHECK_RULES.slice(0, 4).map(({ check }) => check));
  expect(search.next.every(({ because }) => because.length === 0)).toBe(true);
  expect(search.causes).toEqual([]);
});

test('the other side of the axle: a mismatch is looked at first and points to itself', () => {
  const search = causeSearch(['stroke-over', 'arm-mismatch', 'arm-past-square'], []);
  expect(search.next[0]).toEqual({
    check: 'arm-as-other-side',
    because: ['arm-mismatch', 'arm-past-square'],
  });
  expect(search.causes).toMatchObject([{ cause: 'arm-length-wrong', evidence: ['arm-mismatch'] }]);
});

test('a bad answer points to its cause; what was answered is not asked again, what could not be told is', () => {
  const search = causeSearch(
    ['stroke-over', 'free-stroke-in-range'],
    [
      { check: 'camshaft-free-of-play', answer: 'no' },
      { check: 'clevis-free-of-play', answer: 'yes' },
      { check: 'chamber-mounting-tight', answer: 'cannot-tell' },
    ],
  );
  expect(search.causes).toEqual([
    { cause: 'camshaft-bushing-worn', answers: ['camshaft-free-of-play'], evidence: [] },
  ]);
  expect(nextOf(search)).toContain('chamber-mounting-tight');
  expect(nextOf(search)).not.toContain('clevis-free-of-play');
  expect(nextOf(search)).not.toContain('camshaft-free-of-play');
});

test('good answers to all checks of a cause clear it of what evidence had named', () => {
  const evidence = ['stroke-over', 'adjuster-does-not-take-up'] as const;
  const causesOf = (...answered: Parameters<typeof causeSearch>[1]) =>
    causeSearch(evidence, answered).causes.map(({ cause }) => cause);
  expect(causesOf()).toEqual(['adjuster-worn', 'adjuster-mounting']);
  expect(causesOf({ check: 'adjuster-mounting-tight', answer: 'yes' })).toEqual(['adjuster-worn']);
  // The part itself was looked at: that counts more than evidence from outside.
  expect(causesOf({ check: 'adjuster-mounting-tight', answer: 'no' })[0]).toBe('adjuster-mounting');
});

test('a cause that two things speak for comes before one that a single answer names', () => {
  const answered = (['clevis-free-of-play', 'camshaft-free-of-play'] as const).map(
    (check) => ({ check, answer: 'no' }) as const,
  );
  expect(causeSearch(['stroke-over', 'camshaft-play-over'], answered).causes).toMatchObject([
    { cause: 'camshaft-bushing-worn', evidence: ['camshaft-play-over'] },
    { cause: 'clevis-worn', evidence: [] },
  ]);
});

test('everything answered: nothing more to ask', () => {
  const answers = CAUSE_CHECKS.map((check) => ({ check, answer: 'yes' as const }));
  expect(causeSearch(['stroke-over'], answers).next).toEqual([]);
});

test('the table has every check once, and a check for every cause that a part can have', () => {
  expect(CHECK_RULES.map(({ check }) => check).toSorted()).toEqual([...CAUSE_CHECKS].toSorted());
  const reached = new Set(CHECK_RULES.flatMap(({ pointsTo }) => pointsTo));
  expect(CAUSES.filter((cause) => !reached.has(cause))).toEqual(['adjuster-set-wrong', 'other', 'not-found']);
});
