import { useState } from 'react';
import { kpaFromPsi, psiFromKpa } from '../../basics/units.ts';
import { MOST_PRESSURE_KPA } from '../../record/conditions.ts';
import { CONDITIONS } from '../words/inspection.ts';

type Props = {
  readonly label: string;
  readonly valueKpa: number | null;
  readonly onChange: (kpa: number | null) => void;
};

/** Gauges read in psi; what is typed stays as typed. */
export function PressureField({ label, valueKpa, onChange }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? (valueKpa === null ? '' : String(Math.round(psiFromKpa(valueKpa) * 10) / 10));
  const kpaOf = (text: string) => kpaFromPsi(Number(text.replace(',', '.')));
  const isGood = (text: string) => {
    const kpa = kpaOf(text);
    return kpa >= 0 && kpa <= MOST_PRESSURE_KPA;
  };
  const fault = typed !== null && typed.trim() !== '' && !isGood(typed);
  return (
    <label className="field">
      <span>{`${label}, ${CONDITIONS.psi}`}</span>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={shown}
        aria-invalid={fault}
        onChange={(event) => {
          const text = event.target.value;
          setTyped(text);
          if (text.trim() === '') onChange(null);
          else if (isGood(text)) onChange(kpaOf(text));
        }}
        onBlur={() => {
          if (!fault) setTyped(null);
        }}
      />
      {fault ? <em className="look fault">{CONDITIONS.pressureWrong}</em> : null}
    </label>
  );
}
