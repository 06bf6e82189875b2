/** Changes of a wheel end's adjuster check, always of the record as it is now. */
import { type AdjusterCheck, MOST_TURNS, type WrenchTurn } from '../../record/wheel-end.ts';
import { notices, work } from '../stores.ts';
import { WRENCH } from '../words/adjuster.ts';

const NO_CHECK: AdjusterCheck = {
  answer: null,
  applications: null,
  backedOff: null,
  cameraStill: false,
  turns: [],
};

export const checkOf = ({ adjusterCheck }: { readonly adjusterCheck: AdjusterCheck | null }): AdjusterCheck =>
  adjusterCheck ?? NO_CHECK;

export function changeCheck(
  wheelEndId: string,
  change: (check: AdjusterCheck) => Partial<AdjusterCheck>,
): void {
  const wheelEnd = work.getState().open?.history.present.wheelEnds.find(({ id }) => id === wheelEndId);
  if (!wheelEnd) return;
  const check = checkOf(wheelEnd);
  const adjusterCheck = { ...check, ...change(check) };
  work.actOn({ wheelEndId, measurementId: null }, { type: 'set-wheel-end', facts: { adjusterCheck } });
}

export function changeTurn(wheelEndId: string, index: number, changed: Partial<WrenchTurn>): void {
  changeCheck(wheelEndId, ({ turns }) => ({
    turns: turns.map((turn, i) => (i === index ? { ...turn, ...changed } : turn)),
  }));
}

/** A picture just taken: after as many applications as are counted by now. */
export function addTurn(wheelEndId: string, captureId: string): void {
  changeCheck(wheelEndId, ({ turns, applications }) => {
    if (turns.length >= MOST_TURNS) {
      notices.tell('turns', WRENCH.full(MOST_TURNS));
      return {};
    }
    const applicationsBefore = applications ?? 0;
    const unmarked = { frame: null, centre: null, tip: null, pin: null, camshaft: null };
    return { turns: [...turns, { captureId, applicationsBefore, ...unmarked }] };
  });
}

export function dropTurn(wheelEndId: string, index: number): void {
  changeCheck(wheelEndId, ({ turns }) => ({ turns: turns.filter((_turn, i) => i !== index) }));
}
