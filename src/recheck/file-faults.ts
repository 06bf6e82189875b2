/** The files of a package against its manifest. */
import type { Manifest } from '../evidence/manifest.ts';
import { TIME_STAMP_PATH } from '../evidence/package-path.ts';
import type { ContainerFault, FilesFault, HashFault } from './difference.ts';
import type { Files } from './read-files.ts';

export function checksumFaults(files: Files): ContainerFault[] {
  return [...files.values()]
    .filter(({ facts, stated }) => facts.crc32 !== stated.crc32 || facts.sizeBytes !== stated.sizeBytes)
    .map(({ path }) => ({ code: 'container/checksum', path }));
}

export function filesFaults({ files: listed }: Manifest, files: Files): FilesFault[] {
  const stamp = files.has(TIME_STAMP_PATH) ? [TIME_STAMP_PATH] : [];
  const must = ['manifest.json', 'signature.json', ...stamp, ...listed.map(({ path }) => path)];
  const found = [...files.keys()];
  const missing = must.filter((path) => !files.has(path));
  const notListed = found.filter((path) => !must.includes(path));
  const inBoth = must.filter((path) => files.has(path));
  const outOfOrder = found.filter((path) => must.includes(path)).find((path, i) => path !== inBoth[i]);
  return [
    ...missing.map((path): FilesFault => ({ code: 'files/missing', path })),
    ...notListed.map((path): FilesFault => ({ code: 'files/not-listed', path })),
    ...(outOfOrder === undefined ? [] : [{ code: 'files/out-of-order', path: outOfOrder } as const]),
    ...listed.flatMap(({ path, sizeBytes }): FilesFault[] => {
      const found = files.get(path)?.facts.sizeBytes ?? sizeBytes;
      return found === sizeBytes ? [] : [{ code: 'files/size', path, listed: sizeBytes, found }];
    }),
  ];
}

export function hashFaults({ files: listed }: Manifest, files: Files): HashFault[] {
  return listed.flatMap(({ path, sha256 }) => {
    const found = files.get(path)?.facts.sha256 ?? sha256;
    return found === sha256 ? [] : [{ code: 'hashes/differs', path, listed: sha256, found }];
  });
}
