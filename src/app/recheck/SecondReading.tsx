import { useStore } from 'zustand';
import type { Recheck } from '../../recheck/recheck.ts';
import type { Comparison } from '../../recheck/second-reading.ts';
import { openListed } from '../media/open-kept-record.ts';
import { ColumnHeads } from '../parts/ColumnHeads.tsx';
import { choices } from '../stores.ts';
import { comparedText, QUANTITY_NAMES, SECOND } from '../words/second-reading.ts';
import { recheck } from './recheck-store.ts';
import { startSecondReading } from './start-second-reading.ts';
import type { Second } from './use-second-reading.ts';

type Props = { readonly file: File; readonly found: Recheck; readonly second: Second | null };

/** Only where the frames are certainly those of the first reader. */
export function SecondReading({ file, found, second }: Props) {
  const { record, recorded, manifestSha256, checks } = found;
  const isSame = checks.hashes.answer === 'yes' && checks.captures.answer === 'yes';
  if (!record || !recorded || manifestSha256 === null || !isSame) return null;
  const goOn = () => {
    if (second) void openListed(second.record.id);
    else void startSecondReading(file, found);
    if (second) recheck.close();
  };
  return (
    <section aria-labelledby="second-reading" className="recheck-part">
      <h2 id="second-reading">{SECOND.heading}</h2>
      <p>{SECOND.sentence}</p>
      <div className="row">
        <button type="button" className="button" onClick={goOn}>
          {second ? SECOND.goOn : SECOND.start}
        </button>
      </div>
      {second ? <Compared second={second} /> : null}
    </section>
  );
}

function Compared({ second: { comparisons } }: { readonly second: Second }) {
  const unit = useStore(choices, (state) => state.lengthUnit);
  if (comparisons === null) return <p role="status">{SECOND.comparing}</p>;
  if (comparisons.length === 0) return <p>{SECOND.nothingYet}</p>;
  return (
    <>
      <table className="values">
        <ColumnHeads columns={SECOND.columns} />
        <tbody>
          {comparisons.map((one) => (
            <tr key={`${one.measurement} ${one.quantity}`}>
              <th scope="row">{nameOf(one)}</th>
              <td>{comparedText(one, unit)}</td>
              <td>{one.En.toFixed(2)}</td>
              <td className={one.agrees ? undefined : 'look'}>
                {one.agrees ? SECOND.agrees : SECOND.differs}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{SECOND.meaning}</p>
    </>
  );
}

const nameOf = ({ wheelEnd, quantity }: Comparison) => `${wheelEnd}, ${QUANTITY_NAMES[quantity]}`;
