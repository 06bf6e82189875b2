import { useMemo, useState } from 'react';
import type { InspectionRecord } from '../../record/record.ts';
import { PAPERS, type Paper } from '../../references/paper.ts';
import { saveFile } from '../parts/save-file.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { unitText } from '../words/en.ts';
import { reportFileName } from '../words/file-names.ts';
import { REPORT_SCREEN } from '../words/report.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { paperOfLocale } from './paper-of-locale.ts';
import { ReportPaper } from './ReportPaper.tsx';
import { reportFonts } from './report-fonts.browser.ts';
import { reportHtml, reportOnPage } from './report-html.ts';
import { useGathered } from './use-gathered.ts';

export function ReportSheet({ record }: { readonly record: InspectionRecord }) {
  const unit = useLengthUnit();
  const { gathered, done, of } = useGathered(record);
  const [paper, setPaper] = useState<Paper>(() => paperOfLocale(navigator.language));
  const [madeAt] = useState(() => new Date().toISOString());
  const input = useMemo(
    () => gathered && { record, ...gathered, unit, engine: ENGINE_VERSION, madeAt, signedBy: null },
    [record, gathered, unit, madeAt],
  );
  const shown = useMemo(
    () => input && gathered && reportOnPage(input, gathered.pictures, paper),
    [input, gathered, paper],
  );

  const save = async () => {
    if (!input || !gathered) return;
    const html = reportHtml(input, gathered.pictures, { paper, fonts: await reportFonts() });
    saveFile(new Blob([html], { type: 'text/html;charset=utf-8' }), reportFileName(record));
  };

  return (
    <main className="report-screen">
      <title>{REPORT_SCREEN.title(unitText(record.vehicle.unit))}</title>
      <div className="report-bar" role="toolbar" aria-label={REPORT_SCREEN.heading}>
        <button type="button" className="button plain" onClick={() => work.showScreen('inspection')}>
          {REPORT_SCREEN.back}
        </button>
        <fieldset className="report-papers">
          <legend className="unseen">{REPORT_SCREEN.paper}</legend>
          {PAPERS.map((each) => (
            <label key={each}>
              <input type="radio" name="paper" checked={paper === each} onChange={() => setPaper(each)} />
              {REPORT_SCREEN.papers[each]}
            </label>
          ))}
        </fieldset>
        <button type="button" className="button" disabled={!shown} onClick={() => void save()}>
          {REPORT_SCREEN.save}
        </button>
        <button type="button" className="button main" disabled={!shown} onClick={() => print()}>
          {REPORT_SCREEN.print}
        </button>
      </div>
      {shown ? (
        <ReportPaper {...shown} />
      ) : (
        <p className="report-working" role="status">
          {of > 0 && done === of ? REPORT_SCREEN.pictures : REPORT_SCREEN.working(done, of)}
        </p>
      )}
    </main>
  );
}
