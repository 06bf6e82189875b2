import { useId } from 'react';
import { LINE_CHARACTERS, PARAGRAPH_CHARACTERS } from '../../record/parts.ts';

type Props = {
  readonly label: string;
  readonly value: string;
  readonly maxLength?: number;
  readonly rows?: number;
  readonly onChange: (value: string) => void;
};

export function TextField({
  label,
  value,
  rows,
  maxLength = rows ? PARAGRAPH_CHARACTERS : LINE_CHARACTERS,
  onChange,
}: Props) {
  const id = useId();
  const take = (event: { readonly target: { readonly value: string } }) => onChange(event.target.value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {rows ? (
        <textarea id={id} rows={rows} maxLength={maxLength} value={value} onChange={take} />
      ) : (
        <input id={id} type="text" maxLength={maxLength} value={value} onChange={take} />
      )}
    </div>
  );
}
