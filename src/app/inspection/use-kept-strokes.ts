import { useEffect, useState } from 'react';
import type { InspectionResults } from '../../record/inspection-results.ts';
import { type InspectedStroke, inspectedStrokes } from '../../record/unit-history.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { findHead, keepStrokes } from '../storage/kept-records.ts';
import { savingSettled, work } from '../stores.ts';

const NONE: readonly InspectedStroke[] = [];

/**
 * What the strokes came to is kept beside the record for the list and for the next inspection of the unit. Answers what was kept
 * the last time: shown, marked as such, until each stroke is measured anew.
 */
export function useKeptStrokes(results: InspectionResults): readonly InspectedStroke[] {
  const [kept, setKept] = useState(NONE);
  useEffect(() => {
    const keptId = work.getState().open?.keptId;
    if (keptId !== undefined)
      void findHead(keptId).then((head) => setKept((head.ok && head.value?.strokes) || NONE));
  }, []);
  useEffect(() => {
    const keptId = work.getState().open?.keptId;
    if (keptId === undefined || results.wheelEnds.some(isUnderWay)) return;
    // The head it goes beside is written with the record.
    void savingSettled().then(() => keepStrokes(keptId, inspectedStrokes(results)));
  }, [results]);
  return kept;
}

export function isUnderWay({ asFound, afterRepair }: WheelEndResults): boolean {
  return [asFound, afterRepair].some(
    ({ measurement }) => measurement !== null && measurement.assessment === null,
  );
}
