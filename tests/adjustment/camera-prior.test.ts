import { expect, test } from 'vitest';
import { cameraPrior } from '../../src/adjustment/camera-prior.ts';
import { simulate } from '../simulation/scene.ts';

const [capture] = simulate({ seed: 1, reference: 'tape', sigmaPx: 1 }).input.captures;
if (!capture) throw new Error('a scene has captures');

test.each([
  [26, 0.015],
  [20, 0.015],
  [15, 0.05],
  [null, 0.015],
])('a lens of %s mm may bend by %s: wide ones are not always straightened', (focal35Mm, uK1) => {
  expect(cameraPrior({ ...capture, focal35Mm }, null)).toMatchObject({ k1: 0, uK1 });
});
