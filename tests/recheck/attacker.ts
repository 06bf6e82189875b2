/** What somebody with a text editor and a ZIP program does to a package, and how far he covers his tracks. */
import { factsOf, sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { NODE_HASHES } from '../../src/evidence/hashes.node.ts';
import { type KeyPair, sign } from '../../src/evidence/signature.ts';
import { zipParts } from '../../src/evidence/zip-parts.ts';
import { readContainer } from '../../src/recheck/read-container.ts';
import { joined, subtle } from '../evidence/small-package.ts';

export type Files = Map<string, Uint8Array<ArrayBuffer>>;

export async function filesOf(bytes: Uint8Array<ArrayBuffer>): Promise<Files> {
  const stored = await readContainer(sourceOfBytes(bytes));
  if (!stored.ok) throw new Error(stored.failure.code);
  return new Map(
    stored.value.map(({ path, from, sizeBytes }) => [path, bytes.slice(from, from + sizeBytes)]),
  );
}

export async function packed(files: Files): Promise<Uint8Array<ArrayBuffer>> {
  const contents = [];
  for (const [path, part] of files)
    contents.push({
      path,
      part,
      facts: await factsOf(sourceOfBytes(part).read(0, part.length), NODE_HASHES),
    });
  return joined(zipParts(contents).parts);
}

export function jsonIn(files: Files, path: string) {
  return JSON.parse(new TextDecoder().decode(files.get(path)));
}

export function putJson(files: Files, path: string, value: unknown): void {
  files.set(path, new TextEncoder().encode(`${JSON.stringify(value, null, 2)}\n`));
}

/** Makes the manifest fit the files again; the signature then no longer fits the manifest. */
export async function mendManifest(files: Files): Promise<void> {
  const manifest = jsonIn(files, 'manifest.json');
  for (const file of manifest.files) {
    const bytes = files.get(file.path) ?? new Uint8Array();
    const facts = await factsOf(sourceOfBytes(bytes).read(0, bytes.length), NODE_HASHES);
    Object.assign(file, { sizeBytes: facts.sizeBytes, sha256: facts.sha256 });
  }
  putJson(files, 'manifest.json', manifest);
}

/** Signs anew with a key of his own. */
export async function signAnew(files: Files, keys: KeyPair): Promise<void> {
  putJson(files, 'signature.json', await sign(subtle, keys, files.get('manifest.json') ?? new Uint8Array()));
}
