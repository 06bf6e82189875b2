import { useEffect, useState } from 'react';
import type { InspectionRecord } from '../../record/record.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { media } from '../stores.ts';
import { type GatheredReport, gatherReport } from './gather-report.browser.ts';

export type Gathering = {
  readonly gathered: GatheredReport | null;
  readonly done: number;
  readonly of: number;
};

const NOTHING_YET: Gathering = { gathered: null, done: 0, of: 0 };

/** Computed from the record, as all results are; anew when the record is another. */
export function useGathered(record: InspectionRecord): Gathering {
  const [state, setState] = useState(NOTHING_YET);
  useEffect(() => {
    const control = new AbortController();
    setState(NOTHING_YET);
    gatherReport(record, {
      fileOf: (sha256) => media.getState().files[sha256] ?? null,
      signal: control.signal,
      onProgress: (done, of) => setState({ gathered: null, done, of }),
    }).then((gathered) => {
      if (!control.signal.aborted) setState((before) => ({ ...before, gathered }));
    }, reportUnlessAbort);
    return () => control.abort();
  }, [record]);
  return state;
}
