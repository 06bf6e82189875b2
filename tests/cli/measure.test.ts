import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { degFromRad } from '../../src/basics/units.ts';
import { assess } from '../../src/record/results.ts';
import { EXAMPLE_PATH, exampleRecord, exampleText } from '../record/example-record.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'strokewitness-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** As a person calls it. */
const BY_NPM = ['npm', 'run', '--silent', 'measure', '--'] as const;
/** What npm starts in the end, without its second of looking round. */
const BY_NODE = [process.execPath, '--import', 'tsx', resolve('src/cli/measure.ts')] as const;

function measured(by: readonly [string, ...string[]], paths: readonly string[], cwd = '.') {
  const env = { ...process.env };
  delete env.INIT_CWD;
  const [command, ...words] = by;
  return spawnSync(command, [...words, ...paths], { cwd, env, encoding: 'utf8' });
}

function written(name: string, content: string | Buffer): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

test('prints one object for each measurement, as the engine and the decision give it', () => {
  const { status, stdout, stderr } = measured(BY_NPM, [EXAMPLE_PATH]);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const record = exampleRecord();
  const expected = record.wheelEnds.flatMap((wheelEnd) =>
    wheelEnd.measurements.map((measurement) => {
      const { measurement: result, finding } = assess(record, wheelEnd, measurement);
      const value = result.ok ? result.value : null;
      const degrees = (rad: number | undefined) => (rad === undefined ? null : degFromRad(rad));
      return {
        record: 'example-1',
        wheelEnd: `axle ${wheelEnd.position.axle} ${wheelEnd.position.side}`,
        measurement: measurement.id,
        purpose: measurement.purpose,
        stroke_mm: value?.strokeMm.value ?? null,
        U95_mm: value?.strokeMm.U95 ?? null,
        armAngleReleased_deg: degrees(value?.armAngleReleasedRad?.value),
        armAngleReleased_U95_deg: degrees(value?.armAngleReleasedRad?.U95),
        armAngleApplied_deg: degrees(value?.armAngleAppliedRad?.value),
        armAngleApplied_U95_deg: degrees(value?.armAngleAppliedRad?.U95),
        freeStroke_mm: value?.freeStrokeMm?.value ?? null,
        freeStroke_U95_mm: value?.freeStrokeMm?.U95 ?? null,
        limit_mm: finding.limit?.values[0].limitMm ?? null,
        finding: finding.outcome,
        warnings: expect.any(Array),
      };
    }),
  );
  const rows = JSON.parse(stdout);
  expect(rows).toEqual(expected);
  expect(rows.map((row: { wheelEnd: string }) => row.wheelEnd)).toEqual([
    'axle 1 left',
    'axle 1 right',
    'axle 1 right',
    'axle 2 left',
    'axle 2 right',
    'axle 2 right',
  ]);
});

test('a refused measurement has no numbers and says why; an unproven chamber and two editions are told', () => {
  const rows = JSON.parse(measured(BY_NODE, [EXAMPLE_PATH]).stdout);
  expect(rows[4]).toEqual({
    record: 'example-1',
    wheelEnd: 'axle 2 right',
    measurement: 'a2r-found',
    purpose: 'as-found',
    stroke_mm: null,
    U95_mm: null,
    armAngleReleased_deg: null,
    armAngleReleased_U95_deg: null,
    armAngleApplied_deg: null,
    armAngleApplied_U95_deg: null,
    freeStroke_mm: null,
    freeStroke_U95_mm: null,
    limit_mm: null,
    finding: 'not decided',
    warnings: ['measurement/no-scale'],
  });
  expect(rows[0].warnings).toContain('limit/long-stroke-not-proven');
  expect(rows[0].limit_mm).toBeCloseTo(50.8, 12);
  expect(rows[3].warnings).toContain('limit/editions-differ');
  expect(rows[3].limit_mm).toBeCloseTo(57.15, 12);
});

test('takes several records, from where the person stands', () => {
  const path = written('copy.json', exampleText().replace('"id": "example-1"', '"id": "example-2"'));
  const { status, stdout } = measured(BY_NPM, ['version-1.json', path], 'tests/fixtures/records');
  expect(status).toBe(0);
  const records = JSON.parse(stdout).map((row: { record: string }) => row.record);
  expect(records).toHaveLength(11);
  expect(new Set(records)).toEqual(new Set(['example-1', 'example-2']));
});

test.each<[string, () => string[], RegExp, typeof BY_NPM | typeof BY_NODE]>([
  ['no record named', () => [], /^Name one or more records/, BY_NODE],
  ['a missing file', () => [join(folder, 'nowhere.json')], /nowhere\.json: no such file\.$/, BY_NODE],
  ['a folder', () => [resolve('src')], /a folder, not a record\.$/, BY_NODE],
  ['no JSON', () => [written('a.json', 'stroke 2 in')], /a\.json: not JSON\.$/, BY_NODE],
  [
    'bytes that are no text',
    () => [written('b.json', Buffer.from([0xff, 0xfe, 0x00]))],
    /not a text file/,
    BY_NODE,
  ],
  ['another document', () => [resolve('package.json')], /not a Strokewitness record\.$/, BY_NODE],
  [
    'a newer version',
    () => [written('c.json', exampleText().replace('"version": 7', '"version": 8'))],
    /of version 8; this program reads up to version 7/,
    BY_NODE,
  ],
  [
    'a value out of range',
    () => [written('d.json', exampleText().replace('"axle": 2', '"axle": 99'))],
    /wheelEnds\[2\]\.position\.axle is too large/,
    BY_NODE,
  ],
  [
    'a key that the format does not know',
    () => [written('e.json', exampleText().replace('"unit"', '"colour": "red", "unit"'))],
    /vehicle has a key that the format does not know: "colour"/,
    BY_NODE,
  ],
  [
    'one bad record after a good one',
    () => [resolve(EXAMPLE_PATH), join(folder, 'nowhere.json')],
    /nowhere\.json: no such file\.$/,
    BY_NPM,
  ],
])('bad input: %s', (_what, paths, line, by) => {
  const { status, stdout, stderr } = measured(by, paths());
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  expect(stderr.trimEnd()).toMatch(line);
});
