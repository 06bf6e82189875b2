import { expect, test } from 'vitest';
import { becauseText, CAUSE_NAMES, CHECKS, pointedCauseText } from '../../../src/app/words/causes.ts';
import {
  axleNoteText,
  roadsideShareText,
  ruleText,
  unknownBrakesText,
  wheelEndNoteText,
} from '../../../src/app/words/inspection-rules.ts';
import { CAUSE_CHECKS, CAUSES } from '../../../src/finding/causes.ts';
import { US_RULE_SET } from '../../../src/finding/rule-sets.ts';
import { RULE_IDS } from '../../../src/finding/rule-text.ts';
import type { RoadsideShare } from '../../../src/record/roadside-share.ts';
import { chamber } from '../../finding/chambers.ts';

test('every rule comes with its force, its text, its source and how well we know it', () => {
  for (const id of RULE_IDS) {
    const text = ruleText(id, US_RULE_SET);
    expect(text).toMatch(/^(Law|Roadside criteria|Advice): /);
    expect(text).toMatch(/Source: .+\((.*(read|second-hand).*)\)/);
  }
  expect(ruleText('same-chamber-size', US_RULE_SET)).toContain('49 CFR 393.47(b)');
  expect(ruleText('roadside-share', US_RULE_SET)).toContain('The current edition decides');
});

test('every check asks a question and says how; every cause has a name', () => {
  for (const check of CAUSE_CHECKS) {
    expect(CHECKS[check].question).toMatch(/\?$/);
    expect(CHECKS[check].how).toMatch(/\.$/);
  }
  expect(new Set(CAUSES.map((cause) => CAUSE_NAMES[cause])).size).toBe(CAUSES.length);
  expect(becauseText([])).toBe('next in the usual order');
  expect(
    pointedCauseText({ cause: 'clevis-worn', answers: ['clevis-free-of-play'], evidence: ['stroke-over'] }),
  ).toBe(
    'Clevis pin or bushing worn: “Are clevis, pins and bushings free of play?” no, stroke over the limit.',
  );
});

const SHARE: RoadsideShare = {
  brakes: 10,
  least: 1.5,
  most: 2.5,
  criterionShare: 0.2,
  reached: 'open',
  counts: [],
  unknown: [{ axle: 3, side: 'left' }],
  source: 'roadside-count',
};

test('the roadside count says its range and what is open', () => {
  expect(roadsideShareText(SHARE)).toBe(
    '1 ½ to 2 ½ of 10 brakes, 15 to 25 %: whether that reaches 20 % is open.',
  );
  expect(roadsideShareText({ ...SHARE, least: 0.5, most: 0.5, reached: 'no' })).toBe(
    '½ of 10 brakes, 5 %: that stays below 20 %.',
  );
  expect(unknownBrakesText(SHARE)).toBe('Not known: Axle 3, left.');
});

test('numbers of a note are in the unit that the person chose, with their U', () => {
  const note = { code: 'axle/stroke-differs', differenceMm: -6.35, U95Mm: 1 } as const;
  expect(axleNoteText(note, 'mm')).toContain('6.4 ± 1.0 mm, the right one longer');
  expect(axleNoteText(note, 'fraction')).toContain('1/4 ± 1/16 in');
  const [left, right] = [chamber('clamp', '30'), chamber('clamp', '24')];
  expect(
    axleNoteText({ code: 'axle/chamber-size-differs', left, right, rule: 'same-chamber-size' }, 'mm'),
  ).toContain('24');
  const past = wheelEndNoteText(
    {
      code: 'wheel-end/arm-past-square',
      purpose: 'as-found',
      angleRad: (80 * Math.PI) / 180,
      U95Rad: 0.05,
      halfStrokeRad: (79.5 * Math.PI) / 180,
      isFar: false,
      rule: 'arm-near-square',
    },
    'mm',
  );
  expect(past).toContain('80.0° ± 2.9°, 10.0° past');
  expect(past).toContain('ends 10.5° past');
  expect(past).toContain('no law names an angle');
  const reading = {
    id: 'o',
    purpose: 'as-found',
    what: 'camshaft-play',
    name: '',
    valueMm: 0.9,
    limitMm: 0.762,
    limitIs: 'greatest',
    limitSource: 'Maker',
  } as const;
  expect(wheelEndNoteText({ code: 'wheel-end/reading-over-limit', reading }, 'mm')).toBe(
    'Camshaft play in its bushings, as found: 0.9 mm is more than the limit of 0.8 mm (Maker).',
  );
});
