import { useState } from 'react';
import { parseLength } from '../../basics/length-text.ts';
import { lengthFailureText, TOO_LONG, TOO_SHORT } from '../words/failures-lengths.ts';
import { lengthText } from '../words/values.ts';
import { useLengthUnit } from './use-length-unit.ts';

type Props = {
  readonly label: string;
  readonly valueMm: number | null;
  readonly leastMm?: number;
  /** The longest that the record takes for it. */
  readonly mostMm: number;
  /** Called with every text that reads as a length; null when the field is emptied. */
  readonly onChange: (valueMm: number | null) => void;
};

/** What is typed stays as typed; the value behind it is in millimetres. */
export function LengthField({ label, valueMm, leastMm = 0, mostMm, onChange }: Props) {
  const unit = useLengthUnit();
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? (valueMm === null ? '' : lengthText(valueMm, unit));
  const fault = typed === null || typed.trim() === '' ? null : faultOf(typed);

  function faultOf(text: string): string | null {
    const read = parseLength(text, unit);
    if (!read.ok) return lengthFailureText(read.failure);
    if (read.value < leastMm) return TOO_SHORT(lengthText(leastMm, unit));
    return read.value > mostMm ? TOO_LONG(lengthText(mostMm, unit)) : null;
  }
  return (
    <label className="field">
      <span>{label}</span>
      <input
        type="text"
        inputMode={unit === 'fraction' ? 'text' : 'decimal'}
        autoComplete="off"
        value={shown}
        aria-invalid={fault !== null}
        onChange={(event) => {
          const text = event.target.value;
          setTyped(text);
          const length = parseLength(text, unit);
          if (length.ok && length.value >= leastMm && length.value <= mostMm) onChange(length.value);
          else if (text.trim() === '') onChange(null);
        }}
        onBlur={() => {
          if (fault === null) setTyped(null);
        }}
      />
      {fault ? <em className="look fault">{fault}</em> : null}
    </label>
  );
}
