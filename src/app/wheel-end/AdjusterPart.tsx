import type { InspectionRecord } from '../../record/record.ts';
import { ADJUSTER_KINDS } from '../../record/repair.ts';
import { type AdjusterCheck, MOST_APPLICATIONS, type WheelEnd } from '../../record/wheel-end.ts';
import { changeCheck, checkOf } from '../adjuster/change-check.ts';
import { WrenchPictures } from '../adjuster/WrenchPictures.tsx';
import { Counter } from '../parts/Counter.tsx';
import { Segments } from '../parts/Segments.tsx';
import { work } from '../stores.ts';
import { ADJUSTER, ADJUSTER_ANSWERS } from '../words/adjuster.ts';
import { ADJUSTER_NAMES } from '../words/wheel-end.ts';

const ANSWERS = ['takes-up', 'does-not-take-up', 'cannot-tell'] as const;

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

/** The kind of adjuster; of an automatic one, whether it was seen to take up. */
export function AdjusterPart({ record, wheelEnd }: Props) {
  const { adjuster } = wheelEnd;
  const check = checkOf(wheelEnd);
  const set = (changed: Partial<AdjusterCheck>) => changeCheck(wheelEnd.id, () => changed);
  return (
    <>
      <Segments
        legend={ADJUSTER.kind}
        values={ADJUSTER_KINDS}
        names={ADJUSTER_NAMES}
        value={adjuster}
        onChange={(kind) => work.act({ type: 'set-wheel-end', facts: { adjuster: kind } })}
      />
      {adjuster === 'manual' ? null : (
        <>
          <p>{ADJUSTER.sentence}</p>
          <p className="note">{ADJUSTER.caution}</p>
          <Counter
            label={ADJUSTER.applications}
            fewer={ADJUSTER.fewer}
            more={ADJUSTER.more}
            count={check.applications ?? 0}
            most={MOST_APPLICATIONS}
            onChange={(applications) => set({ applications })}
          />
          <WrenchPictures record={record} wheelEnd={wheelEnd} />
          <Segments
            legend={ADJUSTER.answer}
            values={ANSWERS}
            names={ADJUSTER_ANSWERS}
            value={check.answer}
            onChange={(answer) => set({ answer })}
          />
          <p>{ADJUSTER.noRepair}</p>
        </>
      )}
    </>
  );
}
