import { expect, test } from 'vitest';
import { fitText } from '../../../src/app/words/uncertainty.ts';

const textOf = (degreesOfFreedom: number, inflation = 1) =>
  fitText({ chiSquare: 1, degreesOfFreedom, pValue: 0.1, inflation, worstMark: null });

test('marks that nothing checks are not said to agree', () => {
  expect(textOf(0.3)).toMatch(/do not check each other/);
  expect(textOf(0.3)).not.toMatch(/agree|of 100/);
  expect(textOf(1.2)).toMatch(/^1 observation more than is needed checks the others\. They agree/);
  expect(textOf(6)).toMatch(/^6 observations more than are needed check each other\. They agree/);
});

test('marks that disagree are told so however few there are', () => {
  expect(textOf(0.3, 2)).toMatch(/They disagree.*widened 2\.0 times/);
});
