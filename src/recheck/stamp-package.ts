/**
 * A package with a time stamp put into it. The stamp is of the manifest, which names every other byte, so it lies beside the
 * signature and in no list; nothing else of the package changes but the places in the container.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type ByteSource, bytesOf, factsOf, sourceOfBytes } from '../evidence/byte-source.ts';
import type { Hashes } from '../evidence/hashes.ts';
import { MANIFEST_LIMIT_BYTES } from '../evidence/manifest.ts';
import { TIME_STAMP_PATH } from '../evidence/package-path.ts';
import { type Content, type ZipParts, zipParts } from '../evidence/zip-parts.ts';
import { MANIFEST, SIGNATURE } from './documents.ts';
import { readContainer, type StoredFile } from './read-container.ts';
import type { TimeStamp, TimeStampFault } from './time-stamp.ts';
import { type StampedManifest, type TokenTools, verifyToken } from './verify-token.ts';

export type StampFailure = TimeStampFault | { readonly code: 'stamp/no-package' };

export type StampTools = TokenTools & { readonly hashes: Hashes };

/** A part of a package as a source of its own. */
export type Slice<S extends ByteSource> = (from: number, to: number) => S;

export type StampedPackage<S extends ByteSource> = { readonly zip: ZipParts<S>; readonly stamp: TimeStamp };

/** Its SHA-256 is what an authority is asked to stamp. */
export async function manifestOfPackage(
  source: ByteSource,
  hashes: Hashes,
): Promise<Result<StampedManifest & { readonly stored: readonly StoredFile[] }, StampFailure>> {
  const stored = await readContainer(source);
  const file = stored.ok ? stored.value.find(({ path }) => path === MANIFEST.path) : null;
  const isSigned = stored.ok && stored.value.some(({ path }) => path === SIGNATURE.path);
  if (!stored.ok || !file || !isSigned || file.sizeBytes > MANIFEST_LIMIT_BYTES)
    return fail({ code: 'stamp/no-package' });
  const bytes = await bytesOf(source, file.from, file.from + file.sizeBytes);
  const { sha256 } = await factsOf(sourceOfBytes(bytes).read(0, bytes.length), hashes);
  return ok({ bytes, sha256, stored: stored.value });
}

/** In place of the stamp that is there, if one is. */
export async function stampPackage<S extends ByteSource>(
  source: ByteSource,
  { given, slice }: { readonly given: Uint8Array; readonly slice: Slice<S> },
  tools: StampTools,
): Promise<Result<StampedPackage<S>, StampFailure>> {
  const manifest = await manifestOfPackage(source, tools.hashes);
  if (!manifest.ok) return manifest;
  const verified = await verifyToken(given, manifest.value, tools);
  if (!verified.ok) return verified;
  const { token, stamp } = verified.value;
  const facts = await factsOf(sourceOfBytes(token).read(0, token.length), tools.hashes);
  const contents = manifest.value.stored
    .filter(({ path }) => path !== TIME_STAMP_PATH)
    .flatMap(({ path, from, sizeBytes, crc32 }): Content<S>[] => {
      const file = { path, part: slice(from, from + sizeBytes), facts: { sizeBytes, crc32 } };
      return path === SIGNATURE.path ? [file, { path: TIME_STAMP_PATH, part: token, facts }] : [file];
    });
  return ok({ zip: zipParts(contents), stamp });
}
