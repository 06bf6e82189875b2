import { expect, test } from 'vitest';
import { conditionNoteText } from '../../src/app/words/conditions.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { conditionNotes } from '../../src/record/condition-notes.ts';
import type { Conditions } from '../../src/record/conditions.ts';

const MET: Conditions = {
  wheelsChocked: 'yes',
  engineOff: 'yes',
  springBrakesReleased: 'yes',
  fullApplication: 'yes',
  drumsCold: 'yes',
  procedure: 'roadside',
  pressureBeforeKpa: 655,
  pressureHeldKpa: 586,
  gaugeCaptureId: null,
};

const codes = (changes: Partial<Conditions>) =>
  conditionNotes({ ...MET, ...changes }, US_RULE_SET).map(({ code }) => code);

test('all met: nothing to say', () => {
  expect(codes({})).toEqual([]);
});

test('each condition that is not a yes is said, and how', () => {
  const notes = conditionNotes(
    { ...MET, wheelsChocked: null, springBrakesReleased: 'no', drumsCold: 'cannot-tell' },
    US_RULE_SET,
  );
  expect(notes).toEqual([
    { code: 'conditions/not-answered', condition: 'wheelsChocked' },
    { code: 'conditions/not-met', condition: 'springBrakesReleased' },
    { code: 'conditions/cannot-tell', condition: 'drumsCold' },
  ]);
});

// 90 to 100 psi before the application: 621 to 690 kPa in a provincial handbook, excerpt; 1 psi = 6.894757 kPa.
test.each([
  [610, ['conditions/pressure-low']],
  [621, []],
  [690, []],
  [700, ['conditions/pressure-high']],
  [null, ['conditions/pressure-missing']],
  // 110 psi is 758.4 kPa.
  [765, ['conditions/pressure-high', 'conditions/pressure-too-high']],
])('roadside, %s kPa before the application', (pressureBeforeKpa, expected) => {
  expect(codes({ pressureBeforeKpa })).toEqual(expected);
});

// Appendix A to part 396, 1.a.(5)(a): 80 to 90 psi with the brakes fully applied, 552 to 621 kPa.
test.each([
  [540, ['conditions/pressure-low']],
  [552, []],
  [621, []],
  [630, ['conditions/pressure-high']],
  [null, ['conditions/pressure-missing']],
])('periodic, %s kPa while held', (pressureHeldKpa, expected) => {
  expect(codes({ procedure: 'periodic', pressureHeldKpa })).toEqual(expected);
});

test('the range comes with its source, and in words with both units', () => {
  const [note] = conditionNotes({ ...MET, pressureBeforeKpa: 600 }, US_RULE_SET);
  if (note?.code !== 'conditions/pressure-low') throw new Error('the pressure is low');
  expect(US_RULE_SET.sources.find(({ id }) => id === note.source)?.standing).toContain('excerpt');
  expect(conditionNoteText(note)).toContain('90 to 100 psi (621 to 689 kPa)');
  expect(conditionNoteText(note)).toContain('87 psi (600 kPa)');
});

test('without a rule set there is no range to hold a pressure against', () => {
  expect(conditionNotes({ ...MET, pressureBeforeKpa: null }, null)).toEqual([]);
});
