import { z } from 'zod';
import type { InspectionRecord } from '../../record/record.ts';
import { TextField } from '../parts/TextField.tsx';
import { work } from '../stores.ts';
import { INSPECTION } from '../words/inspection.ts';
import { dayText } from '../words/values.ts';
import { useDraft } from '../work/use-draft.ts';

const draftSchema = z.strictObject({ by: z.string(), note: z.string() });
export const REVIEW_DRAFT = 'review';

export function ReviewForm({ review }: { readonly review: InspectionRecord['review'] }) {
  const [draft, setDraft] = useDraft(REVIEW_DRAFT, draftSchema);
  const { by, note } = draft ?? { by: review?.by ?? '', note: review?.note ?? '' };
  const isNew = by.trim() !== '' && (by !== review?.by || note !== review?.note);
  return (
    <div className="form">
      <p className="quiet">{INSPECTION.reviewHint}</p>
      <TextField label={INSPECTION.reviewBy} value={by} onChange={(typed) => setDraft({ by: typed, note })} />
      <TextField
        label={INSPECTION.reviewNote}
        value={note}
        rows={3}
        onChange={(typed) => setDraft({ by, note: typed })}
      />
      <button
        type="button"
        className="button"
        disabled={!isNew}
        onClick={() => {
          work.act({ type: 'set-review', review: { by: by.trim(), note, at: new Date().toISOString() } });
          setDraft(null);
        }}
      >
        {INSPECTION.reviewDone}
      </button>
      {review ? <p>{INSPECTION.reviewed(review.by, dayText(review.at))}</p> : null}
    </div>
  );
}
