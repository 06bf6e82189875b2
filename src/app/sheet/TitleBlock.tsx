import { LENGTH_UNITS } from '../../basics/length-text.ts';
import { LINE_CHARACTERS } from '../../record/parts.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { Select } from '../parts/Select.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { choices, work } from '../stores.ts';
import { TITLE_BLOCK, UNIT_NAMES } from '../words/en.ts';
import { armText, chamberText, referenceText } from '../words/given.ts';
import type { Current } from '../work/current.ts';
import { Cell } from './Cell.tsx';
import { ResultCells } from './ResultCells.tsx';
import { WheelEndCell } from './WheelEndCell.tsx';

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

/** What is known, as in the corner of a drawing sheet. */
export function TitleBlock({ current, assessment }: Props) {
  const unit = useLengthUnit();
  const { record, wheelEnd, measurement } = current;
  return (
    <section className="title-block" aria-label={TITLE_BLOCK.heading}>
      <dl className="results">
        <ResultCells assessment={assessment} sights={measurement.overStrokeMark} />
      </dl>
      <dl className="given">
        <Cell label={TITLE_BLOCK.unit}>
          <input
            type="text"
            aria-label={TITLE_BLOCK.unit}
            maxLength={LINE_CHARACTERS}
            value={record.vehicle.unit}
            onChange={(event) => work.act({ type: 'set-vehicle', vehicle: { unit: event.target.value } })}
          />
        </Cell>
        <WheelEndCell current={current} />
        <Cell label={TITLE_BLOCK.chamber}>
          {wheelEnd.chamber ? chamberText(wheelEnd.chamber) : TITLE_BLOCK.none}
        </Cell>
        <Cell label={TITLE_BLOCK.arm}>{armText(measurement.references, unit)}</Cell>
        <Cell label={TITLE_BLOCK.reference}>{referenceText(measurement.references, unit)}</Cell>
        <Cell label={TITLE_BLOCK.dimensions}>
          <Select
            label={TITLE_BLOCK.dimensions}
            values={LENGTH_UNITS}
            names={UNIT_NAMES}
            value={unit}
            onChange={(lengthUnit) => lengthUnit && choices.setState({ lengthUnit })}
          />
        </Cell>
      </dl>
    </section>
  );
}
