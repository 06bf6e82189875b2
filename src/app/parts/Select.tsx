type Props<T extends string> = {
  /** Where no label stands about it. */
  readonly label?: string;
  readonly values: readonly T[];
  readonly names: Readonly<Record<T, string>>;
  readonly value: T | null;
  /** What null is called; else it cannot be chosen. */
  readonly none?: string | null;
  readonly onChange: (value: T | null) => void;
};

/** A question with more or longer answers than stand side by side. */
export function Select<T extends string>({ label, values, names, value, none = null, onChange }: Props<T>) {
  return (
    <select
      aria-label={label}
      value={value ?? ''}
      onChange={(event) => onChange(values.find((each) => each === event.target.value) ?? null)}
    >
      {none === null ? null : <option value="">{none}</option>}
      {values.map((each) => (
        <option key={each} value={each}>
          {names[each]}
        </option>
      ))}
    </select>
  );
}
