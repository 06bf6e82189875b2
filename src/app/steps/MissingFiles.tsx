import { useStore } from 'zustand';
import type { InspectionRecord } from '../../record/record.ts';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { FilePicker, PICTURE_FILES } from '../parts/FilePicker.tsx';
import { media } from '../stores.ts';
import { MISSING } from '../words/steps.ts';

export function MissingFiles({ record }: { readonly record: InspectionRecord }) {
  const files = useStore(media, (state) => state.files);
  const missing = record.captures.filter(({ sha256 }) => files[sha256] === null);
  if (missing.length === 0) return null;
  return (
    <section className="missing" aria-label={MISSING.heading}>
      <h2>{MISSING.heading}</h2>
      <p>{MISSING.sentence}</p>
      <FilePicker
        label={MISSING.choose}
        accept={PICTURE_FILES}
        multiple
        onFiles={(chosen) => void takeAnyFiles(chosen)}
      />
      <ul className="ruled">
        {missing.map(({ id, fileName }) => (
          <li key={id}>{fileName}</li>
        ))}
      </ul>
    </section>
  );
}
