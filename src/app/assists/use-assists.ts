import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { AssistQuestion, FoundMark } from '../../vision/assist-sight.ts';
import { type AskedPicture, askedPicture } from '../media/asked-picture.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { media } from '../stores.ts';
import { type Current, viewOf } from '../work/current.ts';
import { useMoving } from '../work/use-work.ts';
import { armSights } from './arm-sight-store.ts';
import { armTrack, armTurnAsked } from './arm-turn-asked.ts';
import { askAssist } from './ask-assist.ts';
import {
  type Asked,
  assistAsked,
  faceAsked,
  isTape,
  type Offered,
  rimAsked,
  rodAsked,
  strokesAsked,
} from './assist-asked.ts';
import { type AssistSearch, assistKey, assistSearches } from './assists-store.ts';
import { guessedEnds, guessedMarks } from './guess-asked.ts';
import { namedStrokes } from './named-strokes.ts';
import { useGuess } from './use-guess.ts';

type Searched = { readonly key: string; readonly search: AssistSearch | null };
export type Assist = Offered & Searched;

/** What was found about the marks of a picture as they are now, and what is being looked for. */
export function useAssists(measurement: MeasurementInput, state: BrakeState): readonly Assist[] {
  const guessed = useGuess(measurement, state);
  const asked = useAsked(measurement, state);
  return useMemo(() => [...(guessed ? guessedEnds(guessed) : []), ...asked], [guessed, asked]);
}

/** What is guessed and not taken counts as marked: the tape is asked about beside it. */
function useAsked(measurement: MeasurementInput, state: BrakeState): readonly (Asked & Searched)[] {
  const { views, references } = measurement;
  const searches = useStore(assistSearches, (store) => store.searches);
  const guessed = useGuess(measurement, state);
  const track = armTrack(measurement, state);
  const arm = useStore(armSights, (store) => (track ? store.searches[track.id] : undefined));
  return useMemo(() => {
    const view = viewOf({ views }, state);
    if (!view) return [];
    const others = views.filter((each) => each !== view);
    const marks = guessed ? [...view.marks, ...guessedMarks(guessed)] : view.marks;
    const all = [
      ...assistAsked({ marks }, state === 'released' ? null : viewOf({ views }, 'released')),
      ...(references.tape ? strokesAsked(marks) : []),
      ...armTurnAsked(arm),
    ];
    const searchedOf = (asked: Asked) => {
      const key = assistKey(view, asked.question);
      return { ...asked, key, search: searches[key] ?? null };
    };
    const searched = all.flatMap((asked) => namedStrokes(searchedOf(asked), marks, others) ?? []);
    const found = marksFoundOf(searched, isTape);
    const beside = [...rimAsked(marks, found), ...rodAsked(marks, found)].map(searchedOf);
    const rod = marksFoundOf(beside, (of) => of === 'rod-line');
    // A tape whose zero sits on the face says where that is: another edge would not do.
    const face = references.tape?.zeroAtFace ? [] : faceAsked(marks, found, rod);
    return [...searched, ...beside, ...face.map(searchedOf)];
  }, [views, references, state, searches, guessed, arm]);
}

function marksFoundOf(
  searched: readonly (Asked & Searched)[],
  isIt: (of: AssistQuestion['of']) => boolean,
): readonly FoundMark[] | null {
  const it = searched.find(({ question, search }) => isIt(question.of) && search?.is === 'found');
  return it?.search?.is === 'found' ? it.search.marks : null;
}

/** Asks the assists about marks as they are set, one after the other. A mark that is being moved is waited for. */
export function useAssistSearch({ record, measurement }: Current, state: BrakeState): void {
  const view = viewOf(measurement, state);
  const files = useStore(media, (store) => store.files);
  const moving = useMoving();
  const next = useAsked(measurement, state).find(
    ({ search }) => search === null || search.is === 'under-way',
  );
  const isOfBoth = next !== undefined && 'same' in next.question && next.question.same !== null;
  const other = view && next?.other ? { captureId: view.captureId, frame: next.other } : null;
  const beside = other ?? (isOfBoth ? viewOf(measurement, 'released') : null);
  const picture = askedPicture(record, files, view);
  const second = askedPicture(record, files, beside);
  const isThere = picture !== null && (beside === null || second !== null);
  useSearch(
    assistSearches,
    next && !moving && isThere
      ? { key: next.key, seek: (signal) => seek(picture, second, next.question, signal) }
      : null,
  );
}

async function seek(
  asked: AskedPicture,
  beside: AskedPicture | null,
  question: AssistQuestion,
  signal: AbortSignal,
): Promise<Exclude<AssistSearch, UnderWay>> {
  const sight = await askAssist(asked, beside, question, signal);
  if (!sight.ok) return { is: 'failed', failure: sight.failure };
  const { marks, isRead = false } = sight.value;
  return question.of === 'chamber-face' ? { is: 'several', marks } : { is: 'found', marks, isRead };
}
