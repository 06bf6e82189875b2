import type { Recheck } from '../../recheck/recheck.ts';
import { RECHECK, signedText, verdictText } from '../words/recheck.ts';

export function Verdict({ found }: { readonly found: Recheck }) {
  const { fingerprint, state } = found.signature;
  return (
    <>
      <h2 className={found.holds ? undefined : 'look'}>{verdictText(found)}</h2>
      <p>
        {signedText(state)} {fingerprint ? <strong className="key-print">{fingerprint}</strong> : null}
      </p>
      {state === 'good' ? <p className="quiet">{RECHECK.compareKey}</p> : null}
    </>
  );
}
