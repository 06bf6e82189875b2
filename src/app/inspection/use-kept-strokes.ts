import { useEffect } from 'react';
import type { InspectionResults } from '../../record/inspection-results.ts';
import { inspectedStrokes } from '../../record/unit-history.ts';
import { keepStrokes } from '../storage/kept-records.ts';
import { savingSettled, work } from '../stores.ts';

/** What the strokes came to is kept beside the record for the list and for the next inspection of the unit. */
export function useKeptStrokes(results: InspectionResults): void {
  useEffect(() => {
    const keptId = work.getState().open?.keptId;
    if (keptId === undefined || isUnderWay(results)) return;
    // The head it goes beside is written with the record.
    void savingSettled().then(() => keepStrokes(keptId, inspectedStrokes(results)));
  }, [results]);
}

function isUnderWay({ wheelEnds }: InspectionResults): boolean {
  return wheelEnds.some(({ asFound, afterRepair }) =>
    [asFound, afterRepair].some(({ measurement }) => measurement !== null && measurement.assessment === null),
  );
}
