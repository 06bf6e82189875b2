import { useEffect, useState } from 'react';
import { blindRecordId } from '../../recheck/blind-record.ts';
import type { Recheck } from '../../recheck/recheck.ts';
import type { Comparison } from '../../recheck/second-reading.ts';
import { openRecord } from '../../record/open-record.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { ENGINE_VERSION } from '../report/engine-version.ts';
import { findRecord } from '../storage/kept-records.ts';
import { savingSettled } from '../stores.ts';
import type { SecondReadingQuestion } from './second-reading.worker.ts';

export type Second = {
  readonly record: InspectionRecord;
  /** Null while it is compared. */
  readonly comparisons: readonly Comparison[] | null;
};

/** The second reader's record of this package, if this device has one, and how it compares. */
export function useSecondReading({ manifestSha256, recorded }: Recheck): Second | null {
  const [second, setSecond] = useState<Second | null>(null);
  useEffect(() => {
    if (manifestSha256 === null || !recorded) return;
    const control = new AbortController();
    const look = async (): Promise<void> => {
      await savingSettled();
      const kept = await findRecord(blindRecordId(manifestSha256));
      if (!kept.ok || !kept.value || control.signal.aborted) return;
      const opened = openRecord(JSON.stringify(kept.value.record));
      if (!opened.ok) return;
      setSecond({ record: opened.value, comparisons: null });
      const startWorker = () =>
        new Worker(new URL('./second-reading.worker.ts', import.meta.url), { type: 'module' });
      const question = { first: recorded, second: opened.value, engine: ENGINE_VERSION };
      const comparisons = await askOnce<SecondReadingQuestion, readonly Comparison[]>(
        startWorker,
        question,
        control.signal,
      );
      setSecond({ record: opened.value, comparisons });
    };
    look().catch(reportUnlessAbort);
    return () => control.abort();
  }, [manifestSha256, recorded]);
  return second;
}
