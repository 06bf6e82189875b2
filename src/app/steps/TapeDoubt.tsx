import type { BrakeState } from '../../marks/view.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import { chosen, takeFound } from '../assists/take-found.ts';
import type { Assist } from '../assists/use-assists.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { ASSISTS } from '../words/assists.ts';

type Props = { readonly assist: Assist; readonly state: BrakeState };

/** What was typed and what the tape's numerals say differ: the person says which holds. Undecided, the mark stays as it was typed. */
export function TapeDoubt({ assist, state }: Props) {
  const unit = useLengthUnit();
  if (assist.search?.is !== 'doubted') return null;
  const { doubt } = assist.search;
  const { typedMm, readMm, byTyped, byRead } = doubt;
  const take = (marks: readonly FoundMark[], readingMm: number) => (
    <button
      type="button"
      className="button"
      onClick={() => work.act(takeFound(state, [chosen(assist, marks)], () => crypto.randomUUID()))}
    >
      {ASSISTS.readsSo(readingMm, unit)}
    </button>
  );
  return (
    <div className="ruled-group">
      <p role="status">{ASSISTS.doubted(doubt, unit)}</p>
      {byTyped ? null : <p className="quiet">{ASSISTS.onlyTyped}</p>}
      <div className="row">
        {byTyped ? take(byTyped, typedMm) : null}
        {take(byRead, readMm)}
      </div>
    </div>
  );
}
