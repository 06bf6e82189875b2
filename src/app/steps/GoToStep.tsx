import { work } from '../stores.ts';
import { goToStep } from '../words/steps.ts';
import type { Step } from '../work/steps.ts';

export function GoToStep({ step }: { readonly step: Step }) {
  return (
    <button type="button" className="button main wide" onClick={() => work.goTo(step)}>
      {goToStep(step)}
    </button>
  );
}
