/** The work at hand: the record with its history, and the place in it. Results are not here: they are computed from it. */
import { createStore } from 'zustand/vanilla';
import type { Mark } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import { noteHistory } from '../../record/note-history.ts';
import { withPlayedClip } from '../../record/played-clips.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Action, Target } from './actions.ts';
import { applyAction } from './apply-action.ts';
import type { HandKind } from './asked-marks.ts';
import { changedPlace } from './changed-place.ts';
import {
  beginDrag,
  cancelDrag,
  endDrag,
  type History,
  redo,
  startHistory,
  step,
  throughout,
  undo,
} from './history.ts';
import { atStep, fittingPlace, type Place, type Screen } from './place.ts';
import type { Step } from './steps.ts';

export type OpenWork = {
  /** Under which it is kept on this device. Not the record's own id: an older copy of the same record may be kept too. */
  readonly keptId: string;
  readonly history: History<InspectionRecord>;
  readonly place: Place;
};

export type WorkState = { readonly open: OpenWork | null };

export function createWorkStore(now: () => string = () => new Date().toISOString()) {
  const store = createStore<WorkState>(() => ({ open: null }));

  function change(turn: (open: OpenWork) => OpenWork) {
    store.setState(({ open }) => ({ open: open && turn(open) }));
  }
  const turnHistory = (turn: (history: History<InspectionRecord>) => History<InspectionRecord>) =>
    change((open) => {
      const history = turn(open.history);
      return { ...open, history, place: fittingPlace(history.present, open.place) };
    });
  /** What was done stays told in the record's history, also when it is taken back. */
  const takeBack = (
    act: 'undone' | 'redone',
    turn: (history: History<InspectionRecord>) => History<InspectionRecord>,
  ) =>
    turnHistory((before) => {
      const after = turn(before);
      if (after.present === before.present) return after;
      const told = { ...after.present, history: before.present.history };
      return { ...after, present: noteHistory(told, { at: now(), act, place: '' }) };
    });
  const acted = (open: OpenWork, action: Action): OpenWork => {
    const record = open.history.present;
    const after = applyAction(record, open.place.target, action);
    const place = after === record ? null : changedPlace(record, open.place.target, action);
    const told = place === null ? after : noteHistory(after, { at: now(), act: 'changed', place });
    return { ...open, history: step(open.history, told) };
  };
  const turnPlace = (turn: (place: Place) => Place) =>
    change((open) => ({ ...open, place: turn(open.place) }));

  return {
    ...store,
    openRecord(record: InspectionRecord, kept: { readonly id: string; readonly place: Place | null }) {
      const place = fittingPlace(record, kept.place);
      store.setState({ open: { keptId: kept.id, history: startHistory(record), place } });
    },
    closeRecord: () => store.setState({ open: null }),
    act: (action: Action) => change((open) => acted(open, action)),
    /** Of a wheel end other than the one at hand, or none. */
    actOn: (target: Target, action: Action) =>
      change((open) => ({
        ...acted({ ...open, place: { ...open.place, target } }, action),
        place: open.place,
      })),
    /** The record as it is sealed for handing over: no step to take back. */
    takeSealed: (record: InspectionRecord) =>
      change((open) => ({ ...open, history: { ...open.history, present: record } })),
    /** No step to take back either: undo does not make a player a decoder. */
    notePlayed: (captureId: string) =>
      change((open) => {
        const history = throughout(open.history, (record) => withPlayedClip(record, captureId));
        if (history.present.captures === open.history.present.captures) return open;
        const present = noteHistory(history.present, { at: now(), act: 'changed', place: 'pictures' });
        return { ...open, history: { ...history, present } };
      }),
    beginDrag: () => turnHistory(beginDrag),
    endDrag: () => turnHistory(endDrag),
    cancelDrag: () => turnHistory(cancelDrag),
    undo: () => takeBack('undone', undo),
    redo: () => takeBack('redone', redo),
    goTo: (to: Step) => turnPlace((place) => atStep(place, to)),
    turnTo: (target: Target) =>
      turnPlace((place) => ({ ...atStep(place, 'pictures'), screen: 'measuring', target })),
    showWheelEnd: (wheelEndId: string) =>
      turnPlace((place) => ({ ...place, screen: 'wheel-end', target: { wheelEndId, measurementId: null } })),
    showScreen: (screen: Screen) => turnPlace((place) => ({ ...place, screen })),
    show: (shown: BrakeState) => turnPlace((place) => ({ ...place, shown })),
    placeMark(state: BrakeState, mark: Mark, done: boolean) {
      change((open) => {
        const { place } = open;
        return {
          ...acted(open, { type: 'place-mark', state, mark }),
          place: {
            ...place,
            typedReadingMm: null,
            pickedKind: done || place.onceMore ? null : place.pickedKind,
            onceMore: false,
          },
        };
      });
    },
    select: (selectedMarkId: string | null) => turnPlace((place) => ({ ...place, selectedMarkId })),
    pick: (pickedKind: HandKind | null) =>
      turnPlace((place) => ({
        ...place,
        pickedKind,
        onceMore: false,
        selectedMarkId: null,
        passedOver: place.passedOver.filter((kind) => kind !== pickedKind),
      })),
    setOnceMore: (pickedKind: HandKind) =>
      turnPlace((place) => ({ ...place, pickedKind, onceMore: true, selectedMarkId: null })),
    passOver: (kind: HandKind) =>
      turnPlace((place) => ({ ...place, pickedKind: null, passedOver: [...place.passedOver, kind] })),
    typeReading: (typedReadingMm: number | null) => turnPlace((place) => ({ ...place, typedReadingMm })),
    crop: (cropping: Place['cropping']) =>
      turnPlace((place) => ({ ...place, cropping, shown: cropping ?? place.shown })),
    look: (chooser: Place['chooser']) => turnPlace((place) => ({ ...place, chooser })),
  };
}
