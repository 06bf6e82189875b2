import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { followsNext } from '../following/follows-next.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { work } from '../stores.ts';
import { nextStep, STEP_TITLES } from '../words/steps.ts';
import { type Current, viewOf } from '../work/current.ts';
import { markedState, type Step, stepDone, stepsOf } from '../work/steps.ts';
import { ChamberStep } from './ChamberStep.tsx';
import { FindingStep } from './FindingStep.tsx';
import { MarksStep } from './MarksStep.tsx';
import { OverStrokeStep } from './OverStrokeStep.tsx';
import { PicturesStep } from './PicturesStep.tsx';
import { ReferenceStep } from './ReferenceStep.tsx';
import { ResultLine } from './ResultLine.tsx';
import { TakeFound } from './TakeFound.tsx';
import { TapeShortcut } from './TapeShortcut.tsx';

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

/** The step at hand: one sentence, one control, and the way on. */
export function StepPanel({ current, assessment }: Props) {
  const { place, wheelEnd, measurement } = current;
  const title = useTurnedTo(place.step);
  const steps = stepsOf(measurement);
  const next = steps[steps.indexOf(place.step) + 1];
  const done = stepDone(place.step, wheelEnd, measurement);
  const marked = markedState(place.step);
  const wayOnAs = (className: string) =>
    next ? (
      <button type="button" className={className} onClick={() => work.goTo(next)}>
        {nextStep(next)}
      </button>
    ) : null;
  const view = marked && viewOf(measurement, marked);
  const follows = view ? followsNext(current, view) : false;
  const wayOn = wayOnAs(done && !follows ? 'button main wide' : 'button wide');
  return (
    <section className="step-panel" id="step" aria-labelledby="step-title" tabIndex={-1}>
      <div className="step-body" key={place.step}>
        <h2 id="step-title" ref={title} tabIndex={-1}>
          {STEP_TITLES[place.step]}
        </h2>
        {bodyOf(current, assessment)}
      </div>
      {next ? (
        <div className="step-next">
          <ResultLine assessment={assessment} />
          {marked ? (
            <TakeFound
              key={marked}
              current={current}
              state={marked}
              next={next}
              beside={wayOnAs('button wide')}
            >
              {wayOn}
            </TakeFound>
          ) : place.step === 'pictures' ? (
            <TapeShortcut current={current}>{wayOn}</TapeShortcut>
          ) : (
            wayOn
          )}
        </div>
      ) : null}
    </section>
  );
}

/** A step is seen from its head, picture first; whose button went with the step before has the keys at its title. */
function useTurnedTo(step: Step) {
  const title = useRef<HTMLHeadingElement>(null);
  const seen = useRef(step);
  useLayoutEffect(() => {
    if (seen.current === step) return;
    seen.current = step;
    scrollTo(0, 0);
    if (document.activeElement === document.body) title.current?.focus({ preventScroll: true });
  }, [step]);
  return title;
}

function bodyOf(current: Current, assessment: ShownAssessment): ReactNode {
  const { step } = current.place;
  const state = markedState(step);
  if (state !== null)
    return <MarksStep key={state} current={current} assessment={assessment} state={state} />;
  switch (step) {
    case 'pictures':
      return <PicturesStep current={current} assessment={assessment} />;
    case 'reference':
      return <ReferenceStep current={current} />;
    case 'chamber':
      return <ChamberStep current={current} />;
    case 'over-stroke':
      return <OverStrokeStep current={current} assessment={assessment} />;
    default:
      return <FindingStep current={current} assessment={assessment} />;
  }
}
