import type { MarkKind } from '../../marks/mark.ts';
import { work } from '../stores.ts';
import { MARK_NAMES, MARKS } from '../words/marks.ts';
import type { AskedMark } from '../work/asked-marks.ts';

type Props = { readonly asked: readonly AskedMark[]; readonly asking: MarkKind | null };

/** All that this picture is asked for; a tap on a line makes it the one to place. */
export function MarkList({ asked, asking }: Props) {
  return (
    <ul className="ruled mark-list" aria-label={MARKS.list}>
      {asked.map(({ kind, have, need, optional }) => (
        <li key={kind}>
          <button
            type="button"
            aria-pressed={kind === asking}
            onClick={() => work.pick(kind === asking ? null : kind)}
          >
            <span>
              {MARK_NAMES[kind]}
              {optional ? <span className="quiet hint">{MARKS.optionalWhy[kind]}</span> : null}
            </span>
            <span className={have < need && !optional ? 'count missing-count' : 'count'}>
              {have === 0 && optional ? MARKS.optional : MARKS.count(have, need)}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
