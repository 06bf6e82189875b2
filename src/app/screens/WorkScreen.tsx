import { useAssessment } from '../measuring/use-assessment.ts';
import { useWide } from '../parts/use-wide.ts';
import { Pictures } from '../pictures/Pictures.tsx';
import { TitleBlock } from '../sheet/TitleBlock.tsx';
import { StepPanel } from '../steps/StepPanel.tsx';
import { work } from '../stores.ts';
import { useTargetSearch } from '../target/use-target-search.ts';
import { AID_LINE, BAR, workTitle } from '../words/en.ts';
import { positionName } from '../words/inspection.ts';
import type { Current } from '../work/current.ts';
import { Notices } from './Notices.tsx';
import { StepStrip } from './StepStrip.tsx';
import { TopBar } from './TopBar.tsx';
import { useUndoKeys } from './use-undo-keys.ts';

export function WorkScreen({ current }: { readonly current: Current }) {
  const assessment = useAssessment(current);
  useTargetSearch(current);
  useUndoKeys();
  const wide = useWide();
  const steps = <StepStrip key="steps" current={current} />;
  const bar = (
    <TopBar
      key="bar"
      record={current.record}
      back={positionName(current.wheelEnd.position)}
      onBack={() => work.showWheelEnd(current.wheelEnd.id)}
    />
  );
  return (
    <div
      className="work"
      data-step={current.place.step}
      data-measured={assessment.measurement.ok || undefined}
    >
      <a className="skip" href="#step">
        {BAR.skip}
      </a>
      <header>
        <h1 className="unseen">{workTitle(current.record.vehicle.unit)}</h1>
        {wide ? [steps, bar] : [bar, steps]}
      </header>
      <Notices />
      <main>
        <Pictures current={current} assessment={assessment} />
        <div className="side">
          <StepPanel current={current} assessment={assessment} />
          <TitleBlock current={current} assessment={assessment} />
        </div>
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );
}
