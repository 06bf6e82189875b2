import type { ReactNode } from 'react';

type Props = {
  readonly label: ReactNode;
  readonly hint?: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  /** Given for one of several that exclude each other. */
  readonly group?: string;
};

export function Choice({ label, hint, checked, onChange, group }: Props) {
  return (
    <label className="choice">
      <input
        type={group ? 'radio' : 'checkbox'}
        name={group}
        checked={checked}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>
        {label}
        {hint ? <span className="quiet hint">{hint}</span> : null}
      </span>
    </label>
  );
}
