import { MOST_AXLES } from '../../record/vehicle.ts';
import { work } from '../stores.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { PURPOSE_NAMES } from '../words/wheel-end.ts';
import type { Current } from '../work/current.ts';
import { Cell } from './Cell.tsx';

export function WheelEndCell({ current }: { readonly current: Current }) {
  const { wheelEnd, measurement } = current;
  const { position } = wheelEnd;
  return (
    <Cell label={TITLE_BLOCK.position}>
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
      <span className="quiet">{PURPOSE_NAMES[measurement.purpose]}</span>
    </Cell>
  );
}
