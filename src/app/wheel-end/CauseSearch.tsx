import type { CauseCheck } from '../../finding/causes.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import type { WheelEndSearch } from '../../record/wheel-end-search.ts';
import { AnswerChoice } from '../parts/AnswerChoice.tsx';
import { work } from '../stores.ts';
import { becauseText, CHECKS, FIRST_LOOKS, pointedCauseText, SEARCH } from '../words/causes.ts';

type Props = { readonly wheelEnd: WheelEnd; readonly search: WheelEndSearch };

/** What to check next and why; the answered checks stay above, to be answered anew. */
export function CauseSearch({ wheelEnd, search }: Props) {
  const { first, next, causes } = search;
  const waiting = new Set(next.map(({ check }) => check));
  const done = wheelEnd.causeAnswers.filter(({ check }) => !waiting.has(check));
  return (
    <>
      {first.map((look) => (
        <p key={look}>{FIRST_LOOKS[look]}</p>
      ))}
      {done.map(({ check }) => (
        <Check key={check} check={check} wheelEnd={wheelEnd} />
      ))}
      {next.length > 0 ? <h3>{SEARCH.heading}</h3> : null}
      {next.map(({ check, because }) => (
        <div key={check} className="form">
          <Check check={check} wheelEnd={wheelEnd} />
          <p className="quiet">
            {CHECKS[check].how} <em>({becauseText(because)})</em>
          </p>
        </div>
      ))}
      <h3>{SEARCH.causes}</h3>
      {causes.length === 0 ? <p className="quiet">{SEARCH.noneYet}</p> : null}
      {causes.map((pointed) => (
        <p key={pointed.cause}>{pointedCauseText(pointed)}</p>
      ))}
      <p className="quiet">{SEARCH.finds}</p>
    </>
  );
}

function Check({ check, wheelEnd }: { readonly check: CauseCheck; readonly wheelEnd: WheelEnd }) {
  const given = wheelEnd.causeAnswers.find((answered) => answered.check === check);
  return (
    <AnswerChoice
      question={CHECKS[check].question}
      answer={given?.answer ?? null}
      onAnswer={(answer) => work.act({ type: 'answer-check', check, answer })}
    />
  );
}
