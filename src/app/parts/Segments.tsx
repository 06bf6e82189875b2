import type { ReactNode } from 'react';

type Props<T extends string> = {
  readonly legend: string;
  readonly values: readonly T[];
  readonly names: Readonly<Record<T, string>>;
  readonly drawings?: Readonly<Partial<Record<T, ReactNode>>>;
  readonly value: T | null;
  /** Null: what was chosen is taken back by touching it again. */
  readonly onChange: (value: T | null) => void;
};

/** A question with a few short answers side by side, each large enough for a glove. */
export function Segments<T extends string>({ legend, values, names, drawings, value, onChange }: Props<T>) {
  return (
    <fieldset className="segments">
      <legend>{legend}</legend>
      <div>
        {values.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={value === each}
            onClick={() => onChange(value === each ? null : each)}
          >
            {drawings?.[each]}
            {names[each]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
