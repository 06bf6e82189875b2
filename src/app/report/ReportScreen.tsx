import './report.css';
import { lazy, Suspense } from 'react';
import type { InspectionRecord } from '../../record/record.ts';
import { REPORT_SCREEN } from '../words/report.ts';

/** Fetched when it is asked for: the first view of the page does without it. */
const ReportSheet = lazy(async () => ({ default: (await import('./ReportSheet.tsx')).ReportSheet }));

export function ReportScreen({ record }: { readonly record: InspectionRecord }) {
  const waiting = (
    <p className="report-working" role="status">
      {REPORT_SCREEN.opening}
    </p>
  );
  return (
    <Suspense fallback={waiting}>
      <ReportSheet record={record} />
    </Suspense>
  );
}
