import type { LengthUnit } from '../../basics/length-text.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import type { Assessment } from '../../record/results.ts';
import { kindOf } from '../assists/assist-asked.ts';
import { useAssists } from '../assists/use-assists.ts';
import { followsNext } from '../following/follows-next.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { nameOf, viewerMarks } from '../pictures/viewer-marks.ts';
import { work } from '../stores.ts';
import { besideInGroup } from '../viewer/tab-stops.ts';
import { askingSentence, foundAskingSentence, lookingSentence, MARKS } from '../words/marks.ts';
import { askedMarks, isSingle, missingOf } from '../work/asked-marks.ts';
import { askingFor } from '../work/asking.ts';
import { type Current, viewOf } from '../work/current.ts';
import { graduationStepMm } from '../work/usual-references.ts';
import { AssistOffers } from './AssistOffers.tsx';
import { FollowClip } from './FollowClip.tsx';
import { MarkList } from './MarkList.tsx';
import { PictureAdvice } from './PictureAdvice.tsx';
import { ReadingField } from './ReadingField.tsx';
import { RoughSight } from './RoughSight.tsx';
import { TieFinder } from './TieFinder.tsx';

type Props = { readonly current: Current; readonly assessment: Assessment; readonly state: BrakeState };

export function MarksStep({ current, assessment, state }: Props) {
  const unit = useLengthUnit();
  const { measurement, place } = current;
  const view = viewOf(measurement, state);
  const assists = useAssists(measurement, state);
  if (!view)
    return (
      <>
        <p>{MARKS.noPicture(state)}</p>
        <button type="button" className="button main wide" onClick={() => work.goTo('pictures')}>
          {MARKS.toPictures}
        </button>
      </>
    );
  const asking = askingFor(current, state, graduationStepMm(unit));
  const ofAsked =
    place.pickedKind === null && place.typedReadingMm === null
      ? assists.filter(({ question: { of } }) => kindOf(of) === asking?.kind)
      : [];
  const isFound = ofAsked.some(({ search }) => search?.is === 'found');
  const isLooking =
    asking?.kind === 'tape-graduation' &&
    ofAsked.some(({ search }) => search === null || search.is === 'under-way');
  const asked = askedMarks(view, measurement);
  // With all that it needs it is the next thing to do, and stands where it is seen.
  const followsFirst = followsNext(current, view) && asked.every((each) => missingOf(each) === 0);
  const optional = asked.find(({ kind }) => kind === asking?.kind)?.optional ?? false;
  const selected = view.marks.find(({ id }) => id === place.selectedMarkId);
  const single = selected && isSingle(selected.kind) ? selected.kind : null;
  return (
    <>
      <p className="asking" aria-live="polite">
        {!asking
          ? MARKS.allThere
          : isFound
            ? foundAskingSentence(asking, unit)
            : isLooking
              ? lookingSentence(asking, unit)
              : askingSentence(asking, state, unit)}
      </p>
      {followsFirst ? <FollowClip current={current} view={view} /> : null}
      <RoughSight current={current} view={view} />
      <AssistOffers current={current} state={state} />
      <PictureAdvice current={current} assessment={assessment} states={[state]} />
      {asking?.kind === 'tape-graduation' ? <ReadingField asking={asking} view={view} /> : null}
      {asking && optional ? (
        <button type="button" className="button" onClick={() => work.passOver(asking.kind)}>
          {MARKS.passOver}
        </button>
      ) : null}
      {selected ? (
        <div className="selected-mark">
          <p>{MARKS.selected(nameOf(selected, view.marks, unit), hasNeighbour(view, selected.id, unit))}</p>
          {selected.kind === 'tape-graduation' ? (
            <ReadingField asking={selected} view={view} markId={selected.id} key={selected.id} />
          ) : null}
          {single ? (
            <button type="button" className="button" onClick={() => work.setOnceMore(single)}>
              {MARKS.onceMore}
            </button>
          ) : null}
          <button
            type="button"
            className="button"
            onClick={() => work.act({ type: 'delete-mark', state, markId: selected.id })}
          >
            {MARKS.remove}
          </button>
        </div>
      ) : null}
      <MarkList asked={asked} asking={asking?.kind ?? null} />
      {view.frame && !followsFirst ? <FollowClip current={current} view={view} /> : null}
      {state !== 'released' && !view.frame && !measurement.cameraStill ? (
        <TieFinder current={current} state={state} view={view} />
      ) : null}
    </>
  );
}

function hasNeighbour(view: View, markId: string, unit: LengthUnit): boolean {
  const marks = viewerMarks(view, null, null, unit);
  const mark = marks.find(({ id }) => id === markId);
  return mark !== undefined && ([1, -1] as const).some((by) => besideInGroup(marks, mark, by) !== null);
}
