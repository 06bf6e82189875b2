import { useStore } from 'zustand';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { Choice } from '../parts/Choice.tsx';
import { FilePicker, PICTURE_FILES } from '../parts/FilePicker.tsx';
import { media, work } from '../stores.ts';
import { FIRST } from '../words/en.ts';
import { CLIP, PICTURES } from '../words/steps.ts';
import { capturesHere } from '../work/captures-here.ts';
import type { Current } from '../work/current.ts';
import { CaptureList } from './CaptureList.tsx';
import { MissingFiles } from './MissingFiles.tsx';

export function PicturesStep({ current }: { readonly current: Current }) {
  const { record, measurement, place } = current;
  const reading = useStore(media, (state) => state.reading > 0);
  const { views } = measurement;
  const isFirst = capturesHere(current).length === 0;
  const both = ['released', 'applied'].every((state) => views.some((view) => view.state === state));
  return (
    <>
      {both ? null : <p>{place.chooser ? CLIP.sentence : PICTURES.sentence}</p>}
      <MissingFiles record={record} />
      <FilePicker
        label={reading ? FIRST.busy : isFirst ? PICTURES.choose : PICTURES.more}
        accept={PICTURE_FILES}
        multiple
        main={isFirst}
        disabled={reading}
        onFiles={(files) => void takeAnyFiles(files)}
      />
      <CaptureList current={current} />
      {both ? (
        <button type="button" className="button" onClick={() => work.act({ type: 'swap-views' })}>
          {PICTURES.swap}
        </button>
      ) : (
        <p className="quiet">{PICTURES.orDrop}</p>
      )}
      <Choice
        label={PICTURES.still}
        hint={PICTURES.stillHint}
        checked={measurement.cameraStill}
        onChange={(cameraStill) => work.act({ type: 'set-camera-still', cameraStill })}
      />
    </>
  );
}
