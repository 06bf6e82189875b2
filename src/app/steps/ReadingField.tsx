import { MOST_GRADUATION_MM } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { work } from '../stores.ts';
import { MARKS } from '../words/marks.ts';

type Props = {
  readonly asking: { readonly readingMm: number | null };
  readonly view: View;
  /** Given: corrects this mark's reading. Not given: says what the next graduation reads. */
  readonly markId?: string;
};

export function ReadingField({ asking, view, markId }: Props) {
  return (
    <LengthField
      // A graduation placed is another question: what was typed for it goes.
      key={markId ?? view.marks.length}
      label={markId ? MARKS.readingOf : MARKS.reading}
      mostMm={MOST_GRADUATION_MM}
      valueMm={asking.readingMm}
      onChange={(readingMm) => {
        if (!markId) work.typeReading(readingMm);
        else if (readingMm !== null) work.act({ type: 'set-reading', state: view.state, markId, readingMm });
      }}
    />
  );
}
