import type { Capture } from '../../captures/capture.ts';
import { takePictures } from '../media/take-pictures.ts';
import { FilePicker, PHOTO_FILES } from '../parts/FilePicker.tsx';
import { CapturePhoto } from './CapturePhoto.tsx';

type Props = {
  readonly captures: readonly Capture[];
  readonly captureId: string | null;
  readonly words: { readonly photo: string; readonly add: string; readonly drop: string };
  readonly onChange: (captureId: string | null) => void;
};

/** A place for one photo that proves something. */
export function KeptPhoto({ captures, captureId, words, onChange }: Props) {
  const capture = captures.find(({ id }) => id === captureId);
  if (!capture)
    return (
      <FilePicker
        label={words.add}
        accept={PHOTO_FILES}
        onFiles={(files) => void takePictures(files, (id, kind) => kind === 'photo' && onChange(id))}
      />
    );
  return (
    <figure className="kept-photo">
      <CapturePhoto capture={capture} label={words.photo} />
      <figcaption>
        {words.photo}
        <button type="button" className="button plain" onClick={() => onChange(null)}>
          {words.drop}
        </button>
      </figcaption>
    </figure>
  );
}
