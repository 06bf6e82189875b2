import type { InspectionResults } from '../../record/inspection-results.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { hasStrokeState, holdingResults, type WheelEndResults } from '../../record/wheel-end-results.ts';
import { useInspectionResults } from '../measuring/use-inspection-results.ts';
import { SheetPart } from '../parts/SheetPart.tsx';
import { Notices } from '../screens/Notices.tsx';
import { TopBar } from '../screens/TopBar.tsx';
import { useUndoKeys } from '../screens/use-undo-keys.ts';
import { ChamberChoice } from '../steps/ChamberChoice.tsx';
import { work } from '../stores.ts';
import { AID_LINE } from '../words/en.ts';
import { chamberText } from '../words/given.ts';
import { INSPECTION, positionName, stateText } from '../words/inspection.ts';
import { ADJUSTER_NAMES, PURPOSE_NAMES, WHEEL_END } from '../words/wheel-end.ts';
import { isDrafted } from '../work/use-draft.ts';
import { AdjusterPart } from './AdjusterPart.tsx';
import { CauseSearch } from './CauseSearch.tsx';
import { draftNames } from './drafts.ts';
import { LooksOfChamber } from './LooksOfChamber.tsx';
import { NotesAndPhotos } from './NotesAndPhotos.tsx';
import { OtherReadings } from './OtherReadings.tsx';
import { Repairs } from './Repairs.tsx';
import { StrokePart } from './StrokePart.tsx';
import { Trend } from './Trend.tsx';
import { useEarlierStrokes } from './use-earlier-strokes.ts';
import { WheelEndNotes } from './WheelEndNotes.tsx';
import { WheelEndSteps } from './WheelEndSteps.tsx';

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

export function WheelEndScreen({ record, wheelEnd }: Props) {
  const inspection = useInspectionResults(record);
  useUndoKeys();
  const results = inspection.wheelEnds.find(({ id }) => id === wheelEnd.id);
  if (!results) return null;
  return (
    <div className="inspection">
      <header>
        <TopBar record={record} back={INSPECTION.back} onBack={() => work.showScreen('inspection')} />
      </header>
      <Notices />
      <main className="two-columns">
        <div className="across">
          <WheelEndSteps record={record} wheelEnd={wheelEnd} />
          <h1>{positionName(wheelEnd.position)}</h1>
          <p className={results.state === 'over limit' ? 'look' : ''}>{stateText(results)}</p>
        </div>
        <Strokes record={record} wheelEnd={wheelEnd} inspection={inspection} results={results} />
        <Brake record={record} wheelEnd={wheelEnd} results={results} />
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );
}

type StrokesProps = BrakeProps & { readonly inspection: InspectionResults };

/** What was measured, and what is to be said of it. */
function Strokes({ record, wheelEnd, inspection, results }: StrokesProps) {
  const earlier = useEarlierStrokes(record.vehicle.unit, wheelEnd.position);
  const { asFound, afterRepair, repaired, limit } = results;
  return (
    <div>
      <section className="sheet-part" aria-label={PURPOSE_NAMES['as-found']}>
        <StrokePart wheelEnd={wheelEnd} results={asFound} limit={limit} captures={record.captures} />
        <Trend
          strokes={earlier}
          now={holdingResults(results).strokeMm}
          limitsMm={limit?.values.map(({ limitMm }) => limitMm) ?? []}
        />
      </section>
      <WheelEndNotes inspection={inspection} results={results} />
      {repaired || hasStrokeState(asFound) ? (
        <SheetPart
          title={PURPOSE_NAMES['after-repair']}
          said={afterRepair.strokeMm === null ? WHEEL_END.nothing : undefined}
          open={repaired || isDrafted(draftNames(wheelEnd.id).hand('after-repair'))}
        >
          <StrokePart wheelEnd={wheelEnd} results={afterRepair} limit={limit} captures={record.captures} />
        </SheetPart>
      ) : null}
    </div>
  );
}

type BrakeProps = Props & { readonly results: WheelEndResults };

/** What the brake is, what was found at it and what was done. */
function Brake({ record, wheelEnd, results }: BrakeProps) {
  const drafts = draftNames(wheelEnd.id);
  const count = (length: number) => (length === 0 ? WHEEL_END.none : String(length));
  return (
    <div>
      <SheetPart
        title={WHEEL_END.chamber}
        said={wheelEnd.chamber ? chamberText(wheelEnd.chamber) : WHEEL_END.nothing}
        open={wheelEnd.chamber === null}
      >
        <ChamberChoice ruleSetId={record.ruleSetId} wheelEnd={wheelEnd} />
        <LooksOfChamber record={record} wheelEnd={wheelEnd} />
      </SheetPart>
      <SheetPart
        title={WHEEL_END.adjuster}
        said={wheelEnd.adjuster ? ADJUSTER_NAMES[wheelEnd.adjuster] : WHEEL_END.nothing}
        open={wheelEnd.adjusterCheck?.answer === null}
      >
        <AdjusterPart record={record} wheelEnd={wheelEnd} />
      </SheetPart>
      <SheetPart
        title={WHEEL_END.readings}
        said={count(wheelEnd.otherReadings.length)}
        open={isDrafted(drafts.other)}
      >
        <OtherReadings wheelEnd={wheelEnd} />
      </SheetPart>
      {results.search ? (
        <SheetPart title={WHEEL_END.cause} open={results.state !== 'within limit'}>
          <CauseSearch wheelEnd={wheelEnd} search={results.search} />
        </SheetPart>
      ) : null}
      <SheetPart
        title={WHEEL_END.repair}
        said={count(wheelEnd.repairs.length)}
        open={results.repaired || isDrafted(drafts.repair)}
      >
        <Repairs wheelEnd={wheelEnd} inspector={record.inspector.name} />
      </SheetPart>
      <SheetPart
        title={WHEEL_END.notes}
        said={wheelEnd.notes === '' ? count(wheelEnd.photos.length) : wheelEnd.notes.slice(0, 40)}
      >
        <NotesAndPhotos record={record} wheelEnd={wheelEnd} />
      </SheetPart>
    </div>
  );
}
