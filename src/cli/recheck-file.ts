/** One package at the command line: its path in, its line out. */

import { webcrypto } from 'node:crypto';
import { version } from '../../package.json' with { type: 'json' };
import { byName } from '../basics/by-name.ts';
import { withFileSource } from '../evidence/file-source.node.ts';
import { NODE_HASHES } from '../evidence/hashes.node.ts';
import { checkDocument } from '../recheck/check-document.ts';
import { CHECKS, type Recheck } from '../recheck/recheck.ts';
import { recheckPackage } from '../recheck/recheck-package.ts';
import { playedClips } from '../record/played-clips.ts';

export type RecheckJob = {
  readonly path: string;
  readonly files: readonly string[];
  readonly signedBy: string | null;
  readonly timeRoots: readonly Uint8Array[];
  /** Text of a recheck that somebody made of this package. */
  readonly document: string | null;
};
export type RecheckLine = {
  readonly package: string;
  readonly holds: boolean;
  readonly [key: string]: unknown;
};

export async function recheckFile({
  path,
  files,
  signedBy,
  timeRoots,
  document,
}: RecheckJob): Promise<RecheckLine> {
  try {
    return await withFileSource(files, async (source) => {
      const recheck = await recheckPackage(source, {
        hashes: NODE_HASHES,
        subtle: webcrypto.subtle,
        signedBy,
        timeRoots,
      });
      const line = lineOf(path, source.sizeBytes, recheck);
      return document === null
        ? line
        : withDocument(line, await checkDocument(document, recheck, webcrypto.subtle));
    });
  } catch (error) {
    // Not only a file that cannot be read: whatever a package may do to us, the others are rechecked all the same.
    return { package: path, holds: false, notRechecked: reasonOf(error) };
  }
}

function lineOf(path: string, sizeBytes: number, recheck: Recheck): RecheckLine {
  const { holds, checks, signature, timeStamp, times, record, madeAt, engine } = recheck;
  return {
    package: path,
    holds,
    sizeBytes,
    record: record?.id ?? null,
    madeAt,
    engine: { recorded: engine, here: version },
    signature: signature.state,
    signedBy: signature.fingerprint,
    /** Null: none, or none that can be verified; its check tells which. */
    timeStamp,
    times,
    /** Clips of which a browser's player gave frames. */
    playedClips: playedClips(record?.captures ?? []),
    checks: byName(CHECKS, (name) => checks[name].answer),
    differences: CHECKS.flatMap((check) => checks[check].differences.map((one) => ({ check, ...one }))),
  };
}

/** The package holds or not whatever is said of it; together they hold where what is said can be done again. */
function withDocument(line: RecheckLine, checked: Awaited<ReturnType<typeof checkDocument>>): RecheckLine {
  const document = checked.ok ? checked.value : { failed: checked.failure };
  const holds = checked.ok && (checked.value.secondReading?.notReproduced ?? 0) === 0;
  return { ...line, holds: line.holds && holds, document };
}

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (code === 'ENOENT') return 'no such file';
  if (code === 'EISDIR') return 'a folder, not a package';
  return `cannot be read (${code || String(error)})`;
}
