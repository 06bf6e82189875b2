import type { Recheck } from '../../recheck/recheck.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { RECHECK } from '../words/recheck.ts';
import { saveRecheck } from './save-recheck.ts';
import type { Second } from './use-second-reading.ts';

type Props = { readonly name: string; readonly found: Recheck; readonly second: Second | null };

/** Not for what has no manifest: there is nothing then that names it. */
export function SaveRecheck({ name, found, second }: Props) {
  const { manifestSha256 } = found;
  if (manifestSha256 === null) return null;
  const { record, comparisons } = second ?? { record: null, comparisons: null };
  const reading = record && comparisons && comparisons.length > 0 ? { record, comparisons } : null;
  return (
    <section aria-label={RECHECK.save} className="recheck-part">
      <button
        type="button"
        className="button"
        // While it is compared, half of the document would be missing.
        disabled={second !== null && comparisons === null}
        onClick={() => void saveRecheck(name, { ...found, manifestSha256 }, reading).catch(reportUnlessAbort)}
      >
        {RECHECK.save}
      </button>
      <p className="quiet">{RECHECK.saveHint}</p>
    </section>
  );
}
