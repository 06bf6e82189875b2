/** The record of a package against what lies beside it: captures and rule sets. */
import type { Manifest, RuleSetUsed } from '../evidence/manifest.ts';
import type { InspectionRecord } from '../record/record.ts';
import type { CaptureFault, RuleSetFault } from './difference.ts';

export function captureFaults({ captures }: InspectionRecord, { files }: Manifest): CaptureFault[] {
  const listed = files.filter(({ role }) => role === 'capture');
  const named = new Set(captures.map(({ sha256 }) => sha256));
  const there = new Set(listed.map(({ sha256, sizeBytes }) => `${sha256} ${sizeBytes}`));
  return [
    ...captures
      .filter(({ sha256, sizeBytes }) => !there.has(`${sha256} ${sizeBytes}`))
      .map(({ id, fileName }): CaptureFault => ({ code: 'captures/missing', captureId: id, fileName })),
    ...listed
      .filter(({ sha256 }) => !named.has(sha256))
      .map(({ path }): CaptureFault => ({ code: 'captures/not-in-record', path })),
  ];
}

/** held: what this program would have listed for the record. */
export function ruleSetFaults(
  { ruleSetId }: InspectionRecord,
  { ruleSets: listed }: Manifest,
  held: readonly RuleSetUsed[],
): RuleSetFault[] {
  if (held.length === 0) return [{ code: 'rule-sets/not-held', id: ruleSetId }];
  return [
    ...held.flatMap(({ id, sha256 }): RuleSetFault[] => {
      const used = listed.find((ruleSet) => ruleSet.id === id);
      if (!used) return [{ code: 'rule-sets/not-listed', id }];
      return used.sha256 === sha256 ? [] : [{ code: 'rule-sets/differs', id }];
    }),
    ...listed
      .filter(({ id }) => !held.some((ruleSet) => ruleSet.id === id))
      .map(({ id }): RuleSetFault => ({ code: 'rule-sets/not-held', id })),
  ];
}
