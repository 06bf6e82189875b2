import { useState } from 'react';
import { adjusterOutcome } from '../../record/adjuster-outcome.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { MOST_TURNS, type WheelEnd, type WrenchTurn } from '../../record/wheel-end.ts';
import { takePictures } from '../media/take-pictures.ts';
import { Choice } from '../parts/Choice.tsx';
import { FilePicker, PICTURE_FILES } from '../parts/FilePicker.tsx';
import { Segments } from '../parts/Segments.tsx';
import { BACKED_OFF_NAMES, DECIDED, turnFailureText, WRENCH } from '../words/adjuster.ts';
import { addTurn, changeCheck, checkOf } from './change-check.ts';
import { TurnRead } from './TurnRead.tsx';
import { WrenchPicture } from './WrenchPicture.tsx';
import { markedWrench } from './wrench-plan.ts';
import '../styles/adjuster.css';

function firstToMark(turns: readonly WrenchTurn[]): number | null {
  const index = turns.findIndex((turn) => markedWrench(turn) === null);
  return index < 0 ? null : index;
}

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

const DIRECTIONS = ['counter-clockwise', 'clockwise'] as const;

/** The turn of the wrench, read from pictures, beside what the person saw. */
export function WrenchPictures({ record, wheelEnd }: Props) {
  const check = checkOf(wheelEnd);
  const { turns, cameraStill, backedOff, answer } = check;
  const [opened, setOpened] = useState(() => firstToMark(turns));
  const outcome = adjusterOutcome(record, check);
  const said = outcome.ok ? outcome.value.decision.answer : null;
  return (
    <section className="form wrench" aria-label={WRENCH.heading}>
      <h3>{WRENCH.heading}</h3>
      <p>{WRENCH.how}</p>
      <Segments
        legend={WRENCH.backedOff}
        values={DIRECTIONS}
        names={BACKED_OFF_NAMES}
        value={backedOff}
        onChange={(way) => changeCheck(wheelEnd.id, () => ({ backedOff: way }))}
      />
      <Choice
        label={WRENCH.still}
        hint={WRENCH.stillHint}
        checked={cameraStill}
        onChange={(still) => changeCheck(wheelEnd.id, () => ({ cameraStill: still }))}
      />
      {turns.map((turn, index) => (
        <WrenchPicture
          // biome-ignore lint/suspicious/noArrayIndexKey: a turn has no name but its place.
          key={`${turn.captureId} ${index}`}
          record={record}
          wheelEndId={wheelEnd.id}
          turn={turn}
          index={index}
          alone={turns.filter(({ captureId }) => captureId === turn.captureId).length === 1}
          opened={opened === index}
          onOpen={(open) => setOpened(open ? index : null)}
        />
      ))}
      <FilePicker
        label={WRENCH.add}
        accept={PICTURE_FILES}
        multiple
        disabled={turns.length >= MOST_TURNS}
        onFiles={(files) =>
          void takePictures(files, (captureId) => {
            addTurn(wheelEnd.id, captureId);
            setOpened(turns.length);
          })
        }
      />
      {outcome.ok ? (
        <TurnRead outcome={outcome.value} saidStill={cameraStill} made={check.applications ?? 0} />
      ) : null}
      {!outcome.ok && turns.length > 0 ? <p className="note">{turnFailureText(outcome.failure)}</p> : null}
      {said && answer && said !== answer ? <p className="note">{WRENCH.differs(DECIDED[said])}</p> : null}
    </section>
  );
}
