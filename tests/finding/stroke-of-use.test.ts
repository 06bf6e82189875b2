import { expect, test } from 'vitest';
import { limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { HIGHEST_LIMIT_MM, strokeOfUse } from '../../src/finding/stroke-of-use.ts';
import { chamber, INCH } from './chambers.ts';

const stroke = (valueIn: number, UIn: number) => ({
  value: valueIn * INCH,
  u: (UIn * INCH) / 1.96,
  U95: UIn * INCH,
});

test('a stroke whose U95 exceeds the limit is no number to show; without a limit the highest published one holds', () => {
  const limit = limitFor(chamber('clamp', '30'), US_RULE_SET);
  const limitsMm = limit.ok ? limit.value.values.map(({ limitMm }) => limitMm) : [];
  expect(limitsMm).toEqual([2 * INCH]);
  expect(strokeOfUse(stroke(1 / 16, 11.6), limitsMm)).toBeNull();
  expect(strokeOfUse(stroke(1.5, 2.1), limitsMm)).toBeNull();
  expect(strokeOfUse(stroke(1.5, 1.9), limitsMm)).toEqual(stroke(1.5, 1.9));
  // A brake that did not move: far smaller than its limit, and known.
  expect(strokeOfUse(stroke(0, 0.1), limitsMm)).not.toBeNull();
  expect(strokeOfUse(stroke(1.5, 2.1), [])).not.toBeNull();
  expect(strokeOfUse(stroke(1.5, 3.1), [])).toBeNull();
  expect(strokeOfUse(null, limitsMm)).toBeNull();
});

// 49 CFR 393.47(e)(1), the tables of the rule set.
test('no listed limit is higher than the one that holds without a limit', () => {
  const limitsMm = US_RULE_SET.rows.flatMap(({ family, type, limits }) =>
    limits.flatMap(({ strokeClass, ratedStrokeIn }) => {
      const ratedStrokeMm = ratedStrokeIn === null ? null : ratedStrokeIn * INCH;
      const found = limitFor(chamber(family, type, { strokeClass, ratedStrokeMm }), US_RULE_SET);
      return found.ok ? found.value.values.map(({ limitMm }) => limitMm) : [];
    }),
  );
  expect(Math.max(...limitsMm)).toBe(HIGHEST_LIMIT_MM);
});
