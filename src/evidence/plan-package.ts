/**
 * A package before it is written: its headers as bytes, the captures and stills still as the sources that they came in.
 * Nothing large is held: every capture is read once to be hashed, and once more by whoever writes the parts one after the other.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { utf8FromText } from '../basics/utf8.ts';
import type { InspectionRecord } from '../record/record.ts';
import { recordText } from '../record/save-record.ts';
import { type ByteFacts, type ByteSource, factsOf, sourceOfBytes } from './byte-source.ts';
import { type Hashes, sha256OfText } from './hashes.ts';
import { type Manifest, PACKAGE_FORMAT, PACKAGE_LIMIT_FILES, PACKAGE_VERSION } from './manifest.ts';
import { capturePath, type Role, stillPath } from './package-path.ts';
import { resultsOf } from './results.ts';
import { ruleSetsUsed } from './rule-sets-used.ts';
import type { Signature } from './signature.ts';
import { ZIP_LIMIT_BYTES } from './zip-layout.ts';
import { type Content, type ZipParts, zipParts } from './zip-parts.ts';

export type PackageInput<S extends ByteSource> = {
  /** Its history sealed: see history-chain.ts. */
  readonly record: InspectionRecord;
  readonly madeAt: string;
  readonly engine: string;
  /** In the order of the record's captures. */
  readonly captures: readonly S[];
  readonly stills: readonly { readonly name: string; readonly source: S }[];
  /** Self-contained HTML without script. */
  readonly report: string | null;
};

export type PackageTools = {
  readonly hashes: Hashes;
  readonly sign: (manifest: Uint8Array<ArrayBuffer>) => Promise<Signature>;
};

export type PackageFailure =
  /** The file is missing, or not the one that the record speaks of. */
  | { readonly code: 'package/capture-changed'; readonly captureId: string; readonly fileName: string }
  | { readonly code: 'package/too-large'; readonly sizeBytes: number; readonly limitBytes: number }
  | { readonly code: 'package/too-many-files'; readonly files: number; readonly limit: number };

type Hashed<S extends ByteSource> = Content<S> & { readonly facts: ByteFacts };
type Filed<S extends ByteSource> = Hashed<S> & { readonly role: Role };

export async function planPackage<S extends ByteSource>(
  input: PackageInput<S>,
  { hashes, sign }: PackageTools,
): Promise<Result<ZipParts<S>, PackageFailure>> {
  const captures = await captureFiles(input, hashes);
  if (!captures.ok) return captures;
  const files = [
    ...(await textFiles(input, hashes)),
    ...(await stillFiles(input, hashes)),
    ...captures.value,
  ];
  if (files.length > PACKAGE_LIMIT_FILES)
    return fail({ code: 'package/too-many-files', files: files.length, limit: PACKAGE_LIMIT_FILES });
  const manifest = utf8FromText(jsonText(manifestOf(input, files, hashes)));
  const signature = utf8FromText(jsonText(await sign(manifest)));
  const zip = zipParts([
    await bytesFile<S>('manifest.json', manifest, hashes),
    await bytesFile<S>('signature.json', signature, hashes),
    ...files,
  ]);
  return zip.sizeBytes > ZIP_LIMIT_BYTES
    ? fail({ code: 'package/too-large', sizeBytes: zip.sizeBytes, limitBytes: ZIP_LIMIT_BYTES })
    : ok(zip);
}

function manifestOf<S extends ByteSource>(
  { record, madeAt, engine }: PackageInput<S>,
  files: readonly Filed<S>[],
  hashes: Hashes,
): Manifest {
  return {
    format: PACKAGE_FORMAT,
    version: PACKAGE_VERSION,
    madeAt,
    engine,
    ruleSets: ruleSetsUsed(record, sha256OfText(hashes)),
    files: files.map(({ path, role, facts: { sizeBytes, sha256 } }) => ({ path, role, sizeBytes, sha256 })),
  };
}

async function captureFiles<S extends ByteSource>(
  { record, captures }: PackageInput<S>,
  hashes: Hashes,
): Promise<Result<readonly Filed<S>[], PackageFailure>> {
  const files: Filed<S>[] = [];
  for (const [i, capture] of record.captures.entries()) {
    const source = captures[i];
    const facts = source && (await factsOf(source.read(0, source.sizeBytes), hashes));
    if (!source || facts?.sha256 !== capture.sha256)
      return fail({ code: 'package/capture-changed', captureId: capture.id, fileName: capture.fileName });
    files.push({ path: capturePath(i, capture), role: 'capture', part: source, facts });
  }
  return ok(files);
}

async function stillFiles<S extends ByteSource>(
  { stills }: PackageInput<S>,
  hashes: Hashes,
): Promise<Filed<S>[]> {
  const files: Filed<S>[] = [];
  for (const { name, source } of stills) {
    const facts = await factsOf(source.read(0, source.sizeBytes), hashes);
    files.push({ path: stillPath(name), role: 'still', part: source, facts });
  }
  return files;
}

async function textFiles<S extends ByteSource>(
  { record, engine, report }: PackageInput<S>,
  hashes: Hashes,
): Promise<Filed<S>[]> {
  const text = async (path: string, role: Role, content: string): Promise<Filed<S>> => ({
    ...(await bytesFile<S>(path, utf8FromText(content), hashes)),
    role,
  });
  return [
    await text('record.json', 'record', recordText(record)),
    await text('results.json', 'results', jsonText(resultsOf(record, engine))),
    ...(report === null ? [] : [await text('report.html', 'report', report)]),
  ];
}

async function bytesFile<S extends ByteSource>(
  path: string,
  part: Uint8Array<ArrayBuffer>,
  hashes: Hashes,
): Promise<Hashed<S>> {
  return { path, part, facts: await factsOf(sourceOfBytes(part).read(0, part.length), hashes) };
}

function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
