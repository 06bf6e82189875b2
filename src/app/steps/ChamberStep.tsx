import { CHAMBER } from '../words/chambers.ts';
import type { Current } from '../work/current.ts';
import { BandDiameterFollows } from './BandDiameterFollows.tsx';
import { ChamberChoice } from './ChamberChoice.tsx';
import { UsualChambers } from './UsualChambers.tsx';

export function ChamberStep({ current }: { readonly current: Current }) {
  const { record, wheelEnd, measurement } = current;
  return (
    <>
      <p>{CHAMBER.sentence}</p>
      {wheelEnd.chamber ? null : <UsualChambers />}
      <ChamberChoice ruleSetId={record.ruleSetId} wheelEnd={wheelEnd} />
      <BandDiameterFollows chamber={wheelEnd.chamber} references={measurement.references} />
    </>
  );
}
