type Props = {
  readonly label: string;
  readonly fewer: string;
  readonly more: string;
  readonly count: number;
  readonly most: number;
  readonly onChange: (count: number) => void;
};

/** A number of things that happened, told one by one with a glove on. */
export function Counter({ label, fewer, more, count, most, onChange }: Props) {
  return (
    <div className="counter">
      <span>{label}</span>
      <button
        type="button"
        className="button"
        aria-label={fewer}
        disabled={count === 0}
        onClick={() => onChange(count - 1)}
      >
        −
      </button>
      <output>{count}</output>
      <button
        type="button"
        className="button"
        aria-label={more}
        disabled={count === most}
        onClick={() => onChange(count + 1)}
      >
        +
      </button>
    </div>
  );
}
