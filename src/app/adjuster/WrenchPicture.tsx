import type { InspectionRecord } from '../../record/record.ts';
import { MOST_APPLICATIONS, type WrenchTurn } from '../../record/wheel-end.ts';
import { Counter } from '../parts/Counter.tsx';
import { WRENCH, WRENCH_POINTS } from '../words/adjuster.ts';
import { changeTurn, dropTurn } from './change-check.ts';
import { WrenchMarks } from './WrenchMarks.tsx';

type Props = {
  readonly record: InspectionRecord;
  readonly wheelEndId: string;
  readonly turn: WrenchTurn;
  readonly index: number;
  readonly alone: boolean;
  readonly opened: boolean;
  readonly onOpen: (open: boolean) => void;
};

/** One picture of the wrench: a line, and its marks when it is opened. */
export function WrenchPicture({ record, wheelEndId, turn, index, alone, opened, onOpen }: Props) {
  const { applicationsBefore: count, captureId } = turn;
  const missing = WRENCH_POINTS.some((point) => turn[point] === null);
  const capture = record.captures.find(({ id }) => id === captureId) ?? null;
  const setCount = (applicationsBefore: number) => changeTurn(wheelEndId, index, { applicationsBefore });
  return (
    <div className="wrench-picture">
      <button type="button" className="button wide" aria-expanded={opened} onClick={() => onOpen(!opened)}>
        {WRENCH.picture(index + 1, count)}
        <span className="count">{missing ? WRENCH.toMark : WRENCH.marked}</span>
      </button>
      {opened ? (
        <>
          {capture ? (
            <WrenchMarks capture={capture} wheelEndId={wheelEndId} turn={turn} index={index} alone={alone} />
          ) : (
            <p className="look">{WRENCH.missing}</p>
          )}
          <Counter
            label={WRENCH.before}
            fewer={WRENCH.fewer}
            more={WRENCH.more}
            count={count}
            most={MOST_APPLICATIONS}
            onChange={setCount}
          />
          <div className="row">
            <button type="button" className="button" onClick={() => dropTurn(wheelEndId, index)}>
              {WRENCH.drop}
            </button>
            <button type="button" className="button" onClick={() => onOpen(false)}>
              {WRENCH.close}
            </button>
          </div>
        </>
      ) : null}
    </div>
  );
}
