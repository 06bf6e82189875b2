import { expect, test } from 'vitest';
import { warmUp } from '../../src/vision/follow-warm-up.ts';

test('the made picture can be followed, as often as asked', () => {
  const frames = warmUp();
  for (let i = 0; i < 12; i++) expect(frames.next().done).toBe(false);
});
