import { useEffect, useState } from 'react';
import type { Advice } from '../../measurement/advice.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import type { Current } from '../work/current.ts';
import { useMeasureInput } from './use-measure-input.ts';
import { workerClient } from './worker-client.ts';

const adviseApart = workerClient<MeasureInput, readonly Advice[]>(
  () => new Worker(new URL('./advice.worker.ts', import.meta.url), { type: 'module' }),
);

/** What would shrink the uncertainty most, best first; empty until it is known. */
export function useAdvice(current: Current): readonly Advice[] {
  const input = useMeasureInput(current);
  const [answer, setAnswer] = useState<{ input: MeasureInput; advice: readonly Advice[] } | null>(null);
  useEffect(() => adviseApart(input, (advice) => setAnswer({ input, advice })), [input]);
  return answer?.input === input ? answer.advice : [];
}
