/**
 * The import rule: a folder of src imports from itself and from the folders before it in this order, types included.
 * Pure files take zod and nothing else from outside; `*.browser.ts` and `*.node.ts` may take codecs or Node, and no pure
 * file may take them. Type-only imports count, and so do re-exports and dynamic imports.
 */
import { posix } from 'node:path';

const ORDER: readonly string[] = [
  'basics',
  'captures',
  'frames',
  'marks',
  'references',
  'adjustment',
  'measurement',
  'finding',
  'record',
  'evidence',
  'recheck',
];

const PURE_PACKAGES = ['zod'];
/** For time stamps alone, which are ASN.1. */
const TOKEN_PACKAGES = ['pkijs', 'asn1js', '@peculiar/utils'];
const BROWSER_PACKAGES = ['zod', 'mediabunny', 'hash-wasm', 'idb', 'libheif-js'];
const NODE_PACKAGES = ['zod', 'hash-wasm'];

export type Source = { readonly path: string; readonly text: string };

export function importFaults(sources: readonly Source[]): string[] {
  return sources.flatMap(({ path, text }) =>
    importedNames(text)
      .map((name) => faultOf(path, name))
      .filter((fault) => fault !== null),
  );
}

function importedNames(text: string): string[] {
  const pattern = /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+)['"]([^'"]+)['"]/g;
  return [...text.matchAll(pattern)].map((match) => match[1] ?? '');
}

function faultOf(path: string, name: string): string | null {
  const from = folderOf(path);
  const role = roleOf(path);
  if (!name.startsWith('.')) return packageFault(path, from, role, name);
  const target = posix.normalize(posix.join(posix.dirname(path), name));
  const to = folderOf(target);
  const targetRole = roleOf(target);
  if (from === 'app') return targetRole === 'node' || to === 'cli' ? `${path} must not take ${target}` : null;
  if (from === 'cli')
    return to === 'app' || targetRole === 'browser' ? `${path} must not take ${target}` : null;
  if (from === 'vision')
    return to === 'vision' || to === 'basics' ? null : `${path}: vision must not take ${target}`;
  if (targetRole !== 'pure' && role !== targetRole)
    return `${path} must not take the ${targetRole} file ${target}`;
  const fromPlace = ORDER.indexOf(from);
  const toPlace = ORDER.indexOf(to);
  return toPlace < 0 || toPlace > fromPlace
    ? `${path} must not take ${target}: ${to} comes after ${from}`
    : null;
}

function packageFault(path: string, from: string, role: string, name: string): string | null {
  const root = name.startsWith('@') ? name.split('/').slice(0, 2).join('/') : (name.split('/')[0] ?? name);
  if (from === 'app') return root.startsWith('node:') ? `${path}: no Node in the page (${name})` : null;
  if (from === 'cli') return null;
  if (from === 'vision')
    return ['zod', '@opencvjs/web'].includes(root) ? null : `${path} must not take ${name}`;
  if (role === 'node')
    return root.startsWith('node:') || NODE_PACKAGES.includes(root) ? null : `${path}: ${name}`;
  const allowed = role === 'browser' ? BROWSER_PACKAGES : PURE_PACKAGES;
  if (['evidence', 'recheck'].includes(from) && TOKEN_PACKAGES.includes(root)) return null;
  return allowed.includes(root) ? null : `${path} must not take the package ${name}`;
}

function folderOf(path: string): string {
  return path.split('/')[1] ?? '';
}

function roleOf(path: string): 'browser' | 'node' | 'pure' {
  if (/\.browser\.tsx?$/.test(path)) return 'browser';
  return /\.node\.ts$/.test(path) ? 'node' : 'pure';
}
