import { useEffect, useState } from 'react';
import { shallow } from 'zustand/shallow';
import { useMeasureInput } from '../measuring/use-measure-input.ts';
import type { Current } from '../work/current.ts';
import { gaveViews } from '../work/followed-from.ts';
import { type ClipAnswer, type ClipQuestion, clipCurveApart } from './clip-curve-client.ts';

/** Beside the finding and above the chart the same is asked. */
let latest: { readonly question: ClipQuestion; readonly answer: ClipAnswer } | null = null;

/** Computed from the record, as all results are; null while nothing is followed or nothing came of it, or until the first answer is there. */
export function useClipCurve(current: Current): ClipAnswer | null {
  const input = useMeasureInput(current);
  const { measurement } = current;
  const track = gaveViews(measurement) ? (measurement.followed?.track ?? null) : null;
  const [answer, setAnswer] = useState(() => (track ? answered({ input, track }) : null));
  useEffect(() => {
    if (!track) {
      setAnswer(null);
      return;
    }
    const question = { input, track };
    const known = answered(question);
    if (known) setAnswer(known);
    else
      clipCurveApart(question, (answer) => {
        latest = { question, answer };
        setAnswer(answer);
      });
  }, [input, track]);
  return track ? answer : null;
}

function answered({ input, track }: ClipQuestion): ClipAnswer | null {
  return latest && latest.question.track === track && shallow(latest.question.input, input)
    ? latest.answer
    : null;
}
