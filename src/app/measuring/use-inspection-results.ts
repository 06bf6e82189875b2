import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { type InspectionResults, inspectionResults } from '../../record/inspection-results.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { findingFor } from '../../record/results.ts';
import { measuredAll } from '../stores.ts';
import { measuredOf } from './measured-all.ts';

/** Computed from the record, measurement by measurement; what is not measured yet is null in it. */
export function useInspectionResults(record: InspectionRecord): InspectionResults {
  const known = useStore(measuredAll, (state) => state.known);
  useEffect(() => measuredAll.want(record), [record]);
  return useMemo(
    () =>
      inspectionResults(record, (wheelEnd, measurement) => {
        const measured = measuredOf(known, measurement, record);
        if (!measured) return null;
        return { measurement: measured, finding: findingFor(record, wheelEnd, measurement, measured) };
      }),
    [record, known],
  );
}
