import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import { assess } from '../../src/record/results.ts';
import { EXAMPLE_PATH, exampleRecord } from '../record/example-record.ts';

function inspected(...words: readonly string[]) {
  const script = ['--import', 'tsx', resolve('src/cli/inspect.ts')];
  return spawnSync(process.execPath, [...script, ...words], { encoding: 'utf8' });
}

test('prints the results of the inspection, the ends of an axle by name', () => {
  const { status, stdout, stderr } = inspected(EXAMPLE_PATH);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const record = exampleRecord();
  const { axles, ...results } = inspectionResults(record, (wheelEnd, one) => assess(record, wheelEnd, one));
  const printed = JSON.parse(stdout);
  expect(printed).toMatchObject({ record: 'example-1', unit: record.vehicle.unit });
  // As text and back: what is not said at all is left out of text.
  expect(printed).toMatchObject(JSON.parse(JSON.stringify(results)));
  expect(printed.axles.map(({ left, right }: { left: string; right: string }) => [left, right])).toEqual([
    ['w1', 'w2'],
    ['w3', 'w4'],
  ]);
  expect(printed.axles).toHaveLength(axles.length);
});

test('bad input: one line and exit 2', () => {
  for (const words of [[], ['a.json', 'b.json'], ['none.json']]) {
    const { status, stdout, stderr } = inspected(...words);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  }
});
