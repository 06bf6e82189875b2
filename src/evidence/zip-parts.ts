/** The files of a package with the headers between them: written one after the other they are the ZIP file. */
import type { ByteFacts, ByteSource } from './byte-source.ts';
import { directoryHeader, endRecord, localHeader } from './zip-layout.ts';

/** Bytes at hand, or a source that is read when its turn comes. */
export type Part<S extends ByteSource> = Uint8Array<ArrayBuffer> | S;

export type Content<S extends ByteSource> = {
  readonly path: string;
  readonly part: Part<S>;
  readonly facts: Pick<ByteFacts, 'sizeBytes' | 'crc32'>;
};

export type ZipParts<S extends ByteSource> = {
  readonly sizeBytes: number;
  readonly parts: readonly Part<S>[];
};

export function zipParts<S extends ByteSource>(contents: readonly Content<S>[]): ZipParts<S> {
  const parts: Part<S>[] = [];
  const directory: Uint8Array<ArrayBuffer>[] = [];
  let at = 0;
  for (const { path, part, facts } of contents) {
    const entry = { path, sizeBytes: facts.sizeBytes, crc32: facts.crc32 };
    const local = localHeader(entry);
    directory.push(directoryHeader(entry, at));
    parts.push(local, part);
    at += local.length + facts.sizeBytes;
  }
  const directoryBytes = directory.reduce((sum, header) => sum + header.length, 0);
  const end = endRecord(contents.length, directoryBytes, at);
  return { sizeBytes: at + directoryBytes + end.length, parts: [...parts, ...directory, end] };
}
