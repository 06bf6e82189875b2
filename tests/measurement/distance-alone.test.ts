import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { simulate } from '../simulation/scene.ts';

const warned = (options: Parameters<typeof simulate>[0]): boolean => {
  const result = measure(simulate(options).input);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value.warnings.some(({ code }) => code === 'measurement/distance-alone');
};
const options = { seed: 4, sigmaPx: 1, rodMarks: true } as const;

test('one known distance as the only scale of two hand-held pictures is told, nothing else is', () => {
  expect(warned({ ...options, reference: 'distance' })).toBe(true);
  expect(warned({ ...options, reference: 'distance', cameraStill: true })).toBe(false);
  expect(warned({ ...options, reference: 'tape' })).toBe(false);
});
