import { useStore } from 'zustand';
import type { Recheck } from '../../recheck/recheck.ts';
import { ColumnHeads } from '../parts/ColumnHeads.tsx';
import { choices } from '../stores.ts';
import { FINDING_NAMES, PURPOSE_NAMES, RECHECK } from '../words/recheck.ts';
import { lengthText, measuredLengthText } from '../words/values.ts';

/** What the package says was found. The question about results tells whether it is so. */
export function RecordedResults({ found: { record, recorded } }: { readonly found: Recheck }) {
  const unit = useStore(choices, (state) => state.lengthUnit);
  if (!recorded || recorded.length === 0) return null;
  return (
    <section aria-label={RECHECK.results}>
      {record ? <p>{record.vehicle.unit}</p> : null}
      <table className="values">
        <ColumnHeads columns={RECHECK.columns} />
        <tbody>
          {recorded.map(({ row, quantities }) => (
            <tr key={`${row.wheelEnd} ${row.measurement}`}>
              <th scope="row">
                {row.wheelEnd}, {PURPOSE_NAMES[row.purpose]}
              </th>
              <td>
                {quantities?.strokeMm ? measuredLengthText(quantities.strokeMm, unit) : RECHECK.notMeasured}
              </td>
              <td>{row.limit_mm === null ? RECHECK.noLimit : lengthText(row.limit_mm, unit)}</td>
              <td>{FINDING_NAMES[row.finding]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
