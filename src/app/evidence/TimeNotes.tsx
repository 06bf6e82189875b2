import type { StampTimeNote } from '../../recheck/stamp-notes.ts';
import type { TimeNote } from '../../record/time-notes.ts';
import { TIME_NOTES_HEADING, timeNoteText } from '../words/time-notes.ts';

/** Nothing where no time contradicts another. */
export function TimeNotes({ notes }: { readonly notes: readonly (TimeNote | StampTimeNote)[] }) {
  if (notes.length === 0) return null;
  const lines = notes.map(timeNoteText);
  return (
    <div className="time-notes">
      <p className="look">{TIME_NOTES_HEADING}</p>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
