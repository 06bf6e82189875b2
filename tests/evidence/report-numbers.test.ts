/** The report of the example record: its numbers are those of the engine without a screen, and it needs nothing but itself. */
import { expect, test } from 'vitest';
import { reportModel } from '../../src/app/report/compose-report.ts';
import { reportHtml } from '../../src/app/report/report-html.ts';
import { OUTCOMES } from '../../src/app/words/findings.ts';
import { formatLength, formatLengthWithU } from '../../src/basics/length-text.ts';
import { degFromRad } from '../../src/basics/units.ts';
import type { ReportModel, Section } from '../../src/evidence/report-model.ts';
import { adjusterOutcome } from '../../src/record/adjuster-outcome.ts';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import { withPlayedClip } from '../../src/record/played-clips.ts';
import { assess } from '../../src/record/results.ts';
import { exampleRecord } from '../record/example-record.ts';
import { addressesOf, tagsOf } from './tags.ts';

const record = exampleRecord();
const assessed = record.wheelEnds.flatMap((wheelEnd) =>
  wheelEnd.measurements.map((measurement) => ({
    wheelEnd,
    measurement,
    assessment: assess(record, wheelEnd, measurement),
  })),
);
const results = inspectionResults(
  record,
  (_, measurement) => assessed.find((one) => one.measurement === measurement)?.assessment ?? null,
);
const input = {
  record,
  results,
  clips: new Map(),
  unit: 'mm',
  engine: '1.2.3',
  madeAt: '2026-05-12T16:00:00Z',
  signedBy: null,
} as const;
const model = reportModel(input);
const html = reportHtml(input, new Map(), { paper: 'letter', fonts: [] });

const textOf = (sections: readonly Section[]) => JSON.stringify(sections).replaceAll('\u00a0', ' ');

test.each(assessed.map(({ wheelEnd, measurement }) => [measurement.id, wheelEnd, measurement] as const))(
  '%s stands with the stroke, U, limit and finding that the engine gives',
  (_, wheelEnd, measurement) => {
    const { measurement: measured, finding } = assess(record, wheelEnd, measurement);
    const sheet = model.wheelEnds[record.wheelEnds.indexOf(wheelEnd)] as ReportModel['wheelEnds'][number];
    if (!measured.ok) {
      expect(sheet.finding).toContain('Not decided');
      return;
    }
    const { strokeMm, armAngleAppliedRad, fit } = measured.value;
    const said = `${JSON.stringify(sheet.glance)}${textOf(sheet.sections)}`;
    expect(said).toContain(formatLengthWithU(strokeMm.value, strokeMm.U95, 'mm'));
    expect(said).toContain(`${fit.chiSquare.toFixed(1)}; ${fit.degreesOfFreedom.toFixed(1)}`);
    if (armAngleAppliedRad)
      expect(said).toContain(`${((armAngleAppliedRad.value * 180) / Math.PI).toFixed(1)}°`);
    for (const { limitMm } of finding.limit?.values ?? [])
      expect(said).toContain(formatLength(limitMm, 'mm'));
    const outcome = finding.outcome === 'not decided' ? 'Not decided' : OUTCOMES[finding.outcome];
    expect(sheet.finding.toLowerCase()).toContain(outcome.toLowerCase());
  },
);

test('what was entered by hand, found and done stands on the sheet of its wheel end', () => {
  const sheet = textOf(model.wheelEnds[1]?.sections ?? []);
  for (const said of [
    'Paint on the rod worn.',
    'Replaced the adjuster',
    'Adjuster worn or seized',
    '58.7',
    'does not take up',
  ])
    expect(sheet).toContain(said);
});

test('the turn of the wrench stands beside the answer, as the engine measures it', () => {
  const [first, second, ...others] = record.wheelEnds;
  if (!first || !second?.adjusterCheck) throw new Error('the example has an adjuster check');
  // The arm where it is in the first of them.
  const { pin = null, camshaft = null } = second.adjusterCheck.turns[0] ?? {};
  const turns = second.adjusterCheck.turns.map((turn) => ({ ...turn, pin, camshaft }));
  const adjusterCheck = { ...second.adjusterCheck, cameraStill: true, turns };
  const still = { ...record, wheelEnds: [first, { ...second, adjusterCheck }, ...others] };
  const outcome = adjusterOutcome(still, adjusterCheck);
  if (!outcome.ok) throw new Error(outcome.failure.code);
  const sheet = textOf(reportModel({ ...input, record: still }).wheelEnds[1]?.sections ?? []);
  const deg = degFromRad(outcome.value.turn.totalRad.value).toFixed(1);
  expect(sheet).toContain(`clockwise as seen","value":"${deg}°, u `);
  expect(outcome.value.decision.answer).toBe('does-not-take-up');
  expect(sheet).toContain('By the pictures of the wrench","value":"does not take up"');
});

test('what is missing is said: no chamber, no pressure range kept, no picture', () => {
  const bare = {
    ...record,
    inspector: { name: '', qualification: '' },
    conditions: { ...record.conditions, engineOff: null },
  };
  const said = reportModel({ ...input, record: bare });
  expect(said.titleBlock.filter(({ look }) => look).map(({ label }) => label)).toEqual([
    'Inspected by',
    'Qualification as stated',
  ]);
  expect(textOf(said.wheelEnds[3]?.sections ?? [])).toContain('not said');
  expect(html).toContain('The picture is not on this device');
});

test('a clip of which the player gave frames says so beside its measurement and in the list of files', () => {
  const clip = record.captures.find(({ kind }) => kind === 'clip');
  const said = 'Frames taken by the player: “invented-6.mp4”';
  const byDecoder = textOf(model.wheelEnds[1]?.sections ?? []);
  expect(byDecoder).toContain('After repair');
  expect(byDecoder).not.toContain(said);
  expect(textOf(model.closing)).toContain('12.0 s; frames by the decoder');
  const played = reportModel({ ...input, record: withPlayedClip(record, clip?.id ?? '') });
  const sheets = played.wheelEnds.map(({ sections }) => textOf(sections).includes(said));
  expect(sheets).toEqual([false, true, false, false]);
  expect(textOf(played.closing)).toContain('12.0 s; frames by the player');
});

test('who measured with what, and what is not proven', () => {
  const closing = textOf(model.closing);
  for (const said of [
    'Strokewitness 1.2.3',
    record.id,
    'Invented supervisor',
    'pedal was fully down',
    'clock',
  ])
    expect(closing).toContain(said);
  for (const { sha256 } of record.captures) expect(closing).toContain(sha256);
});

test('the file needs nothing but itself and runs nothing', () => {
  expect(tagsOf(html)).not.toContain('script');
  expect(tagsOf(html)).not.toContain('link');
  expect(addressesOf(html)).toEqual([]);
  expect(html).toContain(`default-src 'none'`);
});

test('the same record, results and moment give the same file', () => {
  const again = reportHtml(input, new Map(), { paper: 'letter', fonts: [] });
  expect(again).toBe(html);
});
