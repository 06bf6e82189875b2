import { work } from '../stores.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { positionText } from '../words/given.ts';
import type { Current } from '../work/current.ts';
import { Cell } from './Cell.tsx';

const MOST_AXLES = 20;

export function WheelEndCell({ current }: { readonly current: Current }) {
  const { record, wheelEnd, measurement } = current;
  const { position } = wheelEnd;
  const all = record.wheelEnds.flatMap((each) =>
    each.measurements.map(({ id }, index) => ({ each, measurementId: id, index })),
  );
  return (
    <Cell label={TITLE_BLOCK.position}>
      {all.length > 1 ? (
        <select
          aria-label={TITLE_BLOCK.which}
          value={`${wheelEnd.id} ${measurement.id}`}
          onChange={(event) => {
            const [wheelEndId = '', measurementId = ''] = event.target.value.split(' ');
            work.turnTo({ wheelEndId, measurementId });
          }}
        >
          {all.map(({ each, measurementId, index }) => (
            <option key={measurementId} value={`${each.id} ${measurementId}`}>
              {`${positionText(each.position)}, ${TITLE_BLOCK.measurement} ${index + 1}`}
            </option>
          ))}
        </select>
      ) : null}
      <span className="position">
        <label>
          {TITLE_BLOCK.axle}{' '}
          <select
            value={position.axle}
            onChange={(event) =>
              work.act({ type: 'set-position', position: { ...position, axle: Number(event.target.value) } })
            }
          >
            {Array.from({ length: MOST_AXLES }, (_, index) => index + 1).map((axle) => (
              <option key={axle}>{axle}</option>
            ))}
          </select>
        </label>
        <select
          aria-label={TITLE_BLOCK.side}
          value={position.side}
          onChange={(event) =>
            work.act({
              type: 'set-position',
              position: { ...position, side: event.target.value === 'right' ? 'right' : 'left' },
            })
          }
        >
          <option value="left">{TITLE_BLOCK.left}</option>
          <option value="right">{TITLE_BLOCK.right}</option>
        </select>
      </span>
    </Cell>
  );
}
