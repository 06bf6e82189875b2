import { work } from '../stores.ts';
import { STEP_NAMES, STEPS_LABEL, stepLabel } from '../words/steps.ts';
import type { Current } from '../work/current.ts';
import { stepDone, stepsOf } from '../work/steps.ts';

/** The steps as the numbered fields along a drawing sheet's edge. Any of them can be gone to at any time. */
export function StepStrip({ current }: { readonly current: Current }) {
  const { place, wheelEnd, measurement } = current;
  return (
    <nav aria-label={STEPS_LABEL}>
      <ol className="step-strip">
        {stepsOf(measurement).map((step, index) => {
          const done = stepDone(step, wheelEnd, measurement);
          return (
            <li key={step}>
              <button
                type="button"
                aria-current={step === place.step ? 'step' : undefined}
                aria-label={stepLabel(index + 1, step, done)}
                onClick={() => work.goTo(step)}
              >
                <span className="step-number">
                  {index + 1}
                  {done ? (
                    <svg viewBox="0 0 14 12" aria-hidden="true">
                      <path d="M1 6l4 4 8-9" />
                    </svg>
                  ) : null}
                </span>
                <span className="step-name">{STEP_NAMES[step]}</span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
