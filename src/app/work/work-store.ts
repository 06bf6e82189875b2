/** The work at hand: the record with its history, and the place in it. Results are not here: they are computed from it. */
import { createStore } from 'zustand/vanilla';
import type { Mark } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Action, Target } from './actions.ts';
import { applyAction } from './apply-action.ts';
import type { HandKind } from './asked-marks.ts';
import { beginDrag, cancelDrag, endDrag, type History, redo, startHistory, step, undo } from './history.ts';
import { atStep, fittingPlace, type Place } from './place.ts';
import { markedState, type Step } from './steps.ts';

export type OpenWork = {
  /** Under which it is kept on this device. Not the record's own id: an older copy of the same record may be kept too. */
  readonly keptId: string;
  readonly history: History<InspectionRecord>;
  readonly place: Place;
};

export type WorkState = { readonly open: OpenWork | null };

export function createWorkStore() {
  const store = createStore<WorkState>(() => ({ open: null }));

  function change(turn: (open: OpenWork) => OpenWork) {
    store.setState(({ open }) => ({ open: open && turn(open) }));
  }
  const turnHistory = (turn: (history: History<InspectionRecord>) => History<InspectionRecord>) =>
    change((open) => {
      const history = turn(open.history);
      return { ...open, history, place: fittingPlace(history.present, open.place) ?? open.place };
    });
  const turnPlace = (turn: (place: Place) => Place) =>
    change((open) => ({ ...open, place: turn(open.place) }));

  return {
    ...store,
    /** Answers no where the record holds nothing to work on; what was open then stays open. */
    openRecord(
      record: InspectionRecord,
      kept: { readonly id: string; readonly place: Place | null },
    ): boolean {
      const place = fittingPlace(record, kept.place);
      if (place) store.setState({ open: { keptId: kept.id, history: startHistory(record), place } });
      return place !== null;
    },
    closeRecord: () => store.setState({ open: null }),
    act: (action: Action) =>
      change((open) => ({
        ...open,
        history: step(open.history, applyAction(open.history.present, open.place.target, action)),
      })),
    beginDrag: () => turnHistory(beginDrag),
    endDrag: () => turnHistory(endDrag),
    cancelDrag: () => turnHistory(cancelDrag),
    undo: () => turnHistory(undo),
    redo: () => turnHistory(redo),
    goTo: (to: Step) => turnPlace((place) => atStep(place, to)),
    turnTo: (target: Target) => turnPlace((place) => ({ ...atStep(place, 'pictures'), target })),
    show: (shown: BrakeState) =>
      turnPlace((place) =>
        markedState(place.step) === null ? { ...place, shown } : atStep(place, `marks-${shown}`),
      ),
    placeMark(state: BrakeState, mark: Mark, done: boolean) {
      change(({ keptId, history, place }) => ({
        keptId,
        history: step(
          history,
          applyAction(history.present, place.target, { type: 'place-mark', state, mark }),
        ),
        place: {
          ...place,
          typedReadingMm: null,
          pickedKind: done || place.onceMore ? null : place.pickedKind,
          onceMore: false,
        },
      }));
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
