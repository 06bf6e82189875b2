import { useState } from 'react';
import type { InspectionRecord } from '../../record/record.ts';
import { TextField } from '../parts/TextField.tsx';
import { work } from '../stores.ts';
import { INSPECTION } from '../words/inspection.ts';
import { dayText } from '../words/values.ts';

export function ReviewForm({ review }: { readonly review: InspectionRecord['review'] }) {
  const [by, setBy] = useState(review?.by ?? '');
  const [note, setNote] = useState(review?.note ?? '');
  const isNew = by.trim() !== '' && (by !== review?.by || note !== review?.note);
  return (
    <div className="form">
      <p className="quiet">{INSPECTION.reviewHint}</p>
      <TextField label={INSPECTION.reviewBy} value={by} onChange={setBy} />
      <TextField label={INSPECTION.reviewNote} value={note} rows={3} maxLength={4000} onChange={setNote} />
      <button
        type="button"
        className="button"
        disabled={!isNew}
        onClick={() =>
          work.act({ type: 'set-review', review: { by: by.trim(), note, at: new Date().toISOString() } })
        }
      >
        {INSPECTION.reviewDone}
      </button>
      {review ? <p>{INSPECTION.reviewed(review.by, dayText(review.at))}</p> : null}
    </div>
  );
}
