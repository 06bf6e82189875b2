/** The record of a package against what lies beside it: captures and rule sets. */
import type { Capture } from '../captures/capture.ts';
import type { Manifest, RuleSetUsed } from '../evidence/manifest.ts';
import type { InspectionRecord } from '../record/record.ts';
import type { CaptureFault, RuleSetFault } from './difference.ts';
import type { Files, ReadFile } from './read-files.ts';

/** By the bytes that are there, whatever the manifest says of them. */
export function captureFaults(
  { captures }: InspectionRecord,
  manifest: Manifest,
  files: Files,
): CaptureFault[] {
  const paths = manifest.files.filter(({ role }) => role === 'capture').map(({ path }) => path);
  const found = paths.flatMap((path) => files.get(path) ?? []);
  const named = new Set(captures.map(({ sha256 }) => sha256));
  const there = new Set(found.map(({ facts: { sha256, sizeBytes } }) => `${sha256} ${sizeBytes}`));
  return [
    ...captures
      .filter(({ sha256, sizeBytes }) => !there.has(`${sha256} ${sizeBytes}`))
      .map(({ id, fileName }): CaptureFault => ({ code: 'captures/missing', captureId: id, fileName })),
    ...found
      .filter(({ facts }) => !named.has(facts.sha256))
      .map(({ path }): CaptureFault => ({ code: 'captures/not-in-record', path })),
    ...captures.flatMap((capture) => factFaults(capture, found)),
  ];
}

function factFaults(capture: Capture, found: readonly ReadFile[]): CaptureFault[] {
  const photo = found.find(({ facts }) => facts.sha256 === capture.sha256)?.photo;
  if (!photo) return [];
  const { id: captureId, fileName } = capture;
  return (['takenAt', 'focal35Mm'] as const)
    .filter((fact) => photo[fact] !== capture[fact])
    .map((fact) => ({
      code: 'captures/facts-differ',
      captureId,
      fileName,
      fact,
      recorded: capture[fact],
      found: photo[fact],
    }));
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
