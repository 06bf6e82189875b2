/** Measures the second reader's marks and compares, off the page's own thread. */
import { type RecordedResult, resultsOf } from '../../evidence/results.ts';
import { type Comparison, comparisonsOf } from '../../recheck/second-reading.ts';
import type { InspectionRecord } from '../../record/record.ts';

export type SecondReadingQuestion = {
  readonly first: readonly RecordedResult[];
  readonly second: InspectionRecord;
  readonly engine: string;
};

addEventListener('message', ({ data: { first, second, engine } }: MessageEvent<SecondReadingQuestion>) => {
  const answer: readonly Comparison[] = comparisonsOf(first, resultsOf(second, engine));
  postMessage(answer);
});
