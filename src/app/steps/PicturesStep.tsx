import { useStore } from 'zustand';
import { BRAKE_STATES } from '../../marks/view.ts';
import type { Assessment } from '../../record/results.ts';
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
import { PictureAdvice } from './PictureAdvice.tsx';

type Props = { readonly current: Current; readonly assessment: Assessment };

export function PicturesStep({ current, assessment }: Props) {
  const { record, measurement, place } = current;
  const reading = useStore(media, (state) => state.reading > 0);
  const { views } = measurement;
  const isFirst = capturesHere(current).length === 0;
  const looked = record.captures.find(({ id }) => id === place.chooser?.captureId);
  const both = ['released', 'applied'].every((state) => views.some((view) => view.state === state));
  return (
    <>
      <PictureAdvice current={current} assessment={assessment} states={BRAKE_STATES} />
      {both ? null : (
        <p>
          {looked
            ? looked.clip?.framesBy === 'player'
              ? CLIP.sentencePlayed
              : CLIP.sentence
            : PICTURES.sentence}
        </p>
      )}
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
