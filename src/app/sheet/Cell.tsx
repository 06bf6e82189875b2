import type { ReactNode } from 'react';

type Props = {
  readonly label: string;
  readonly children: ReactNode;
  readonly size?: 'half' | 'whole';
  readonly large?: boolean;
};

/** One ruled cell of the title block: a small label, a large value. */
export function Cell({ label, children, size = 'half', large = false }: Props) {
  return (
    <div className={`cell ${size}`}>
      <dt>{label}</dt>
      <dd className={large ? 'large' : undefined}>{children}</dd>
    </div>
  );
}
