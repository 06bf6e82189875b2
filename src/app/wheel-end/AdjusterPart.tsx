import type { InspectionRecord } from '../../record/record.ts';
import { ADJUSTER_KINDS } from '../../record/repair.ts';
import type { AdjusterCheck, WheelEnd } from '../../record/wheel-end.ts';
import { changeCheck, checkOf } from '../adjuster/change-check.ts';
import { WrenchPictures } from '../adjuster/WrenchPictures.tsx';
import { Segments } from '../parts/Segments.tsx';
import { work } from '../stores.ts';
import { ADJUSTER_ANSWERS, ADJUSTER_CHECK } from '../words/adjuster-check.ts';
import { ADJUSTER_NAMES } from '../words/wheel-end.ts';

const ANSWERS = ['takes-up', 'does-not-take-up', 'cannot-tell'] as const;
const MOST_APPLICATIONS = 100;

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

/** The kind of adjuster; of an automatic one, whether it was seen to take up. */
export function AdjusterPart({ record, wheelEnd }: Props) {
  const { adjuster } = wheelEnd;
  const check = checkOf(wheelEnd);
  const set = (changed: Partial<AdjusterCheck>) => changeCheck(wheelEnd.id, () => changed);
  const applications = check.applications ?? 0;
  return (
    <>
      <Segments
        legend={ADJUSTER_CHECK.kind}
        values={ADJUSTER_KINDS}
        names={ADJUSTER_NAMES}
        value={adjuster}
        onChange={(kind) => work.act({ type: 'set-wheel-end', facts: { adjuster: kind } })}
      />
      {adjuster === 'manual' ? null : (
        <>
          <p>{ADJUSTER_CHECK.sentence}</p>
          <p className="note">{ADJUSTER_CHECK.caution}</p>
          <div className="counter">
            <span>{ADJUSTER_CHECK.applications}</span>
            <button
              type="button"
              className="button"
              aria-label={ADJUSTER_CHECK.fewer}
              disabled={applications === 0}
              onClick={() => set({ applications: applications - 1 })}
            >
              −
            </button>
            <output>{applications}</output>
            <button
              type="button"
              className="button"
              aria-label={ADJUSTER_CHECK.more}
              disabled={applications === MOST_APPLICATIONS}
              onClick={() => set({ applications: applications + 1 })}
            >
              +
            </button>
          </div>
          <WrenchPictures record={record} wheelEnd={wheelEnd} />
          <Segments
            legend={ADJUSTER_CHECK.answer}
            values={ANSWERS}
            names={ADJUSTER_ANSWERS}
            value={check.answer}
            onChange={(answer) => set({ answer })}
          />
          <p className="quiet">{ADJUSTER_CHECK.noRepair}</p>
        </>
      )}
    </>
  );
}
