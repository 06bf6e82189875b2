import { useEffect } from 'react';
import type { InspectionRecord } from '../../record/record.ts';
import { HandOver } from '../evidence/HandOver.tsx';
import { useInspectionResults } from '../measuring/use-inspection-results.ts';
import { SheetPart } from '../parts/SheetPart.tsx';
import { fetchScreens } from '../screens/later-screen.ts';
import { Notices } from '../screens/Notices.tsx';
import { TopBar } from '../screens/TopBar.tsx';
import { useUndoKeys } from '../screens/use-undo-keys.ts';
import { whenIdle } from '../screens/when-idle.ts';
import { MissingFiles } from '../steps/MissingFiles.tsx';
import { work } from '../stores.ts';
import { AID_LINE, BAR, unitText } from '../words/en.ts';
import { CONDITIONS, countedText, INSPECTION, VEHICLE_KIND_NAMES } from '../words/inspection.ts';
import { isDrafted } from '../work/use-draft.ts';
import { AddAxles, AxleList } from './AxleList.tsx';
import { ConditionsForm } from './ConditionsForm.tsx';
import { PlanView } from './PlanView.tsx';
import { REVIEW_DRAFT, ReviewForm } from './ReviewForm.tsx';
import { RulesSaid } from './RulesSaid.tsx';
import { useKeptStrokes } from './use-kept-strokes.ts';
import { VehicleForm } from './VehicleForm.tsx';

export function InspectionScreen({ record }: { readonly record: InspectionRecord }) {
  const results = useInspectionResults(record);
  const kept = useKeptStrokes(results);
  useUndoKeys();
  useEffect(() => whenIdle(fetchScreens), []);
  const { vehicle, inspector, review } = record;
  const isNew = vehicle.axles.length === 0;
  const counted = (['over limit', 'not decided', 'within limit', 'begun', 'not-started'] as const)
    .filter((state) => results.counts[state] > 0)
    .map((state) => countedText(results.counts[state], state));
  const kind = vehicle.kind ? [VEHICLE_KIND_NAMES[vehicle.kind]] : [];
  return (
    <div className="inspection">
      <header>
        <TopBar record={record} back={BAR.close} onBack={() => work.closeRecord()} />
      </header>
      <Notices />
      <main className="plan-and-forms">
        <div className="across">
          <h1>{unitText(vehicle.unit)}</h1>
          <p>{counted.join(', ')}</p>
          <MissingFiles record={record} />
        </div>
        <section className="form" aria-label={INSPECTION.plan}>
          <PlanView vehicle={vehicle} results={results} kept={kept} />
          {isNew ? null : <p className="quiet">{INSPECTION.planHint}</p>}
          <AddAxles vehicle={vehicle} />
        </section>
        <div>
          <SheetPart
            title={INSPECTION.vehicle}
            said={[...kind, inspector.name].filter((part) => part !== '').join(', ')}
            open={isNew}
          >
            <VehicleForm record={record} />
            <AxleList vehicle={vehicle} />
          </SheetPart>
          <SheetPart
            title={CONDITIONS.heading}
            said={conditionsSaid(results.conditions.length)}
            open={isNew || results.conditions.length > 0}
          >
            <ConditionsForm record={record} />
          </SheetPart>
          <RulesSaid record={record} results={results} />
          <SheetPart title={INSPECTION.review} said={review?.by} open={isDrafted(REVIEW_DRAFT)}>
            <ReviewForm review={review} />
          </SheetPart>
          <SheetPart title={INSPECTION.handOver} open={!isNew}>
            <button type="button" className="button main wide" onClick={() => work.showScreen('report')}>
              {INSPECTION.report}
            </button>
            <p className="quiet">{INSPECTION.reportHint}</p>
            <HandOver record={record} />
          </SheetPart>
        </div>
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );
}

function conditionsSaid(open: number): string {
  return open === 0 ? CONDITIONS.allMet : CONDITIONS.open(open);
}
