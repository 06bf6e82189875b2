import type { InspectionRecord } from '../../record/record.ts';
import { MOST_PHOTOS, type WheelEnd } from '../../record/wheel-end.ts';
import { takePictures } from '../media/take-pictures.ts';
import { FilePicker, PHOTO_FILES } from '../parts/FilePicker.tsx';
import { TextField } from '../parts/TextField.tsx';
import { CapturePhoto } from '../pictures/CapturePhoto.tsx';
import { work } from '../stores.ts';
import { WHEEL_END } from '../words/wheel-end.ts';

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

export function NotesAndPhotos({ record, wheelEnd }: Props) {
  const { notes, photos } = wheelEnd;
  const set = (changed: WheelEnd['photos']) =>
    work.act({ type: 'set-wheel-end', facts: { photos: changed } });
  return (
    <div className="form">
      <TextField
        label={WHEEL_END.notesLabel}
        value={notes}
        rows={3}
        onChange={(text) => work.act({ type: 'set-wheel-end', facts: { notes: text } })}
      />
      {photos.map(({ captureId, caption }, index) => {
        const capture = record.captures.find(({ id }) => id === captureId);
        const number = index + 1;
        return (
          <figure key={captureId} className="kept-photo">
            {capture ? <CapturePhoto capture={capture} label={caption || capture.fileName} /> : null}
            <figcaption>
              <TextField
                label={WHEEL_END.caption(number)}
                value={caption}
                onChange={(text) =>
                  set(photos.map((photo, i) => (i === index ? { ...photo, caption: text } : photo)))
                }
              />
              <button
                type="button"
                className="button plain"
                onClick={() => set(photos.filter((_, i) => i !== index))}
              >
                {WHEEL_END.dropPhoto(number)}
              </button>
            </figcaption>
          </figure>
        );
      })}
      <FilePicker
        label={WHEEL_END.addPhoto}
        accept={PHOTO_FILES}
        multiple
        disabled={photos.length >= MOST_PHOTOS}
        onFiles={(files) => void takePictures(files)}
      />
    </div>
  );
}
