/** One JSON file of a package, through a schema. Format and version are read before anything else is believed. */
import { z } from 'zod';
import { type BoundedJsonFailure, parseBoundedJson } from '../basics/bounded-json.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { textFromUtf8 } from '../basics/utf8.ts';
import type { NotReadable } from './difference.ts';
import type { Files } from './read-files.ts';

export type Kind<T> = {
  readonly path: string;
  readonly format: string;
  readonly version: number;
  readonly schema: z.ZodType<T>;
};

/** No document of a package goes deeper than seven. */
const DEPTH = 16;

const headSchema = z.looseObject({ format: z.string(), version: z.int().min(1) });

export function readDocument<T>(
  files: Files,
  { path, format, version, schema }: Kind<T>,
): Result<T, NotReadable & { readonly code: 'document/not-readable' }> {
  const not = (problem: NotReadable['problem'], place = '') =>
    fail({ code: 'document/not-readable', path, problem, place });
  const file = files.get(path);
  if (!file) return not('missing');
  if (!file.bytes) return not('too-large');
  const { bytes } = file;
  const text = textFromUtf8(bytes);
  if (!text.ok) return not('not-text');
  const data = parseBoundedJson(text.value, { characters: bytes.length, depth: DEPTH });
  if (!data.ok) return not(PROBLEMS[data.failure.code]);
  const head = headSchema.safeParse(data.value);
  if (!head.success || head.data.format !== format) return not('other-format');
  if (head.data.version > version) return not('newer-version');
  const parsed = withinStack(() => schema.safeParse(data.value));
  if (parsed?.success) return ok(parsed.data);
  return not('invalid', z.core.toDotPath(parsed?.error.issues[0]?.path ?? []).slice(0, 200));
}

const PROBLEMS: Readonly<Record<BoundedJsonFailure['code'], NotReadable['problem']>> = {
  'json/too-large': 'too-large',
  'json/too-deep': 'too-deep',
  'json/not-json': 'not-json',
};

/** zod hands a list's faults on as call arguments: a hundred thousand of them overflow the stack. */
function withinStack<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
