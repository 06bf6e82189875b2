import { useAdvice } from '../measuring/use-advice.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { adviceText, FINDING } from '../words/findings.ts';
import type { Current } from '../work/current.ts';

const SHOWN = 2;

export function AdviceLines({ current }: { readonly current: Current }) {
  const unit = useLengthUnit();
  const advice = useAdvice(current).slice(0, SHOWN);
  if (advice.length === 0) return null;
  return (
    <div className="said-lines">
      <h3>{FINDING.wouldHelp}</h3>
      {advice.map((each) => (
        <p key={each.proposal}>{adviceText(each, unit)}</p>
      ))}
    </div>
  );
}
