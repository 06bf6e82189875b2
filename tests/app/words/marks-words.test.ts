import { expect, test } from 'vitest';
import { foundAskingSentence } from '../../../src/app/words/marks.ts';

test('what is asked for beside what was found is named', () => {
  expect(foundAskingSentence({ kind: 'tape-graduation', readingMm: 50.8 }, 'fraction')).toMatch(
    /Or mark 2 in by hand\.$/,
  );
  expect(foundAskingSentence({ kind: 'tape-graduation', readingMm: null }, 'fraction')).toMatch(
    /Or mark the tape graduation by hand\.$/,
  );
  expect(foundAskingSentence({ kind: 'rod-line' }, 'mm')).toMatch(/Or mark the rod line by hand\.$/);
});
