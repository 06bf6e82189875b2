import { expect, test } from 'vitest';
import { newestOnly } from '../../../src/app/measuring/newest-only.ts';

test('runs one at a time, and of those that came meanwhile only the newest', () => {
  const started: number[] = [];
  const answers: string[] = [];
  const queue = newestOnly<number, string>((input) => started.push(input));
  for (const input of [1, 2, 3, 4]) queue.ask(input, (output) => answers.push(`${input} ${output}`));
  expect(started).toEqual([1]);
  queue.answered('first');
  expect(started).toEqual([1, 4]);
  queue.answered('second');
  queue.ask(5, (output) => answers.push(`5 ${output}`));
  queue.answered('third');
  expect(started).toEqual([1, 4, 5]);
  expect(answers).toEqual(['1 first', '4 second', '5 third']);
});

test('an answer that asks again at once is served', () => {
  const started: number[] = [];
  const queue = newestOnly<number, string>((input) => started.push(input));
  queue.ask(1, () => queue.ask(2, () => started.push(99)));
  queue.answered('');
  queue.answered('');
  expect(started).toEqual([1, 2, 99]);
});
