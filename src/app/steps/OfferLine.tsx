import type { ReactNode } from 'react';
import type { Assist } from '../assists/use-assists.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { ASSISTS, assistFailureText, foundText } from '../words/assists.ts';

/** What was found about one question, or why nothing was. children: a button beside it. */
export function OfferLine(props: { readonly assist: Assist; readonly children: ReactNode }) {
  const { question, instead, search } = props.assist;
  const unit = useLengthUnit();
  return (
    <li className={props.children ? 'beside-button' : undefined}>
      {search?.is === 'found' ? <p>{foundText(question, search, instead, unit)}</p> : null}
      {search?.is === 'several' ? <p>{ASSISTS.edges(search.marks.length)}</p> : null}
      {search?.is === 'seen' ? <p>{ASSISTS.seen}</p> : null}
      {search?.is === 'failed' ? (
        <p className="quiet">{assistFailureText(question.of, search.failure, unit)}</p>
      ) : null}
      {search === null || search.is === 'under-way' ? (
        <p className="quiet">{ASSISTS.underWay(question.of)}</p>
      ) : null}
      {props.children}
    </li>
  );
}
