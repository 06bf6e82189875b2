import { CHECKS, type Check, type CheckName, type Recheck } from '../../recheck/recheck.ts';
import { ANSWER_NAMES, CHECK_QUESTIONS, differenceText, moreText, RECHECK } from '../words/recheck.ts';

/** As many as a person reads; the command line prints all. */
const SHOWN = 6;

export function CheckList({ found }: { readonly found: Recheck }) {
  return (
    <section aria-labelledby="recheck-checks" className="recheck-part">
      <h2 id="recheck-checks">{RECHECK.questions}</h2>
      <ol className="ruled checks">
        {CHECKS.map((name) => (
          <CheckLine key={name} name={name} check={found.checks[name]} />
        ))}
      </ol>
    </section>
  );
}

function CheckLine({
  name,
  check: { answer, differences },
}: {
  readonly name: CheckName;
  readonly check: Check;
}) {
  const shown = [...new Set(differences.map(differenceText))];
  return (
    <li>
      <p className="check">
        <span>{CHECK_QUESTIONS[name]}</span>
        <strong className={answer === 'no' ? 'look' : undefined}>{ANSWER_NAMES[answer]}</strong>
      </p>
      {shown.length > 0 ? (
        <ul>
          {shown.slice(0, SHOWN).map((text) => (
            <li key={text}>{text}</li>
          ))}
          {shown.length > SHOWN ? <li>{moreText(shown.length - SHOWN)}</li> : null}
        </ul>
      ) : null}
    </li>
  );
}
