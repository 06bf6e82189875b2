import { useEffect, useMemo, useState } from 'react';
import type { Advice } from '../../measurement/advice.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import { measureInput } from '../../record/results.ts';
import type { Current } from '../work/current.ts';
import { workerClient } from './worker-client.ts';

const adviseApart = workerClient<MeasureInput, readonly Advice[]>(
  () => new Worker(new URL('./advice.worker.ts', import.meta.url), { type: 'module' }),
);

/** What would shrink the uncertainty most, best first; empty until it is known. */
export function useAdvice({ record, measurement }: Current): readonly Advice[] {
  const { captures } = record;
  const { views, references, cameraStill } = measurement;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what else is in the record does not bear on the measurement.
  const input = useMemo(() => measureInput(record, measurement), [views, references, cameraStill, captures]);
  const [answer, setAnswer] = useState<{ input: MeasureInput; advice: readonly Advice[] } | null>(null);
  useEffect(() => adviseApart(input, (advice) => setAnswer({ input, advice })), [input]);
  return answer?.input === input ? answer.advice : [];
}
