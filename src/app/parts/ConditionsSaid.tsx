import type { ConditionNote } from '../../record/condition-notes.ts';
import { CONDITIONS_OPEN, conditionNoteText } from '../words/conditions.ts';

/** Stands beside every finding that was made with a condition open. */
export function ConditionsSaid({ notes }: { readonly notes: readonly ConditionNote[] }) {
  if (notes.length === 0) return null;
  return (
    <div className="quiet">
      <p>{CONDITIONS_OPEN}</p>
      <ul className="plain-list">
        {notes.map((note) => (
          <li key={JSON.stringify(note)}>{conditionNoteText(note)}</li>
        ))}
      </ul>
    </div>
  );
}
