/** The record's one border: text in, a record or the first fault out. The version is read before anything else is believed. */
import { z } from 'zod';
import { parseBoundedJson } from '../basics/bounded-json.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { crossFault } from './cross-checks.ts';
import { MIGRATIONS } from './migrations.ts';
import { type InspectionRecord, RECORD_FORMAT, RECORD_VERSION, recordSchema } from './record.ts';
import type { Problem, RecordFailure } from './record-failure.ts';

/** A minute of followed clip comes to 1.7 million at 30 frames a second: eight wheel ends filmed so long at twice that, or many more for less. */
export const RECORD_LIMIT_CHARACTERS = 30_000_000;
/** The format itself goes nine deep. */
export const RECORD_LIMIT_DEPTH = 32;

const headSchema = z.looseObject({ format: z.literal(RECORD_FORMAT), version: z.unknown().optional() });
const versionSchema = z.int().min(1);

export function openRecord(text: string): Result<InspectionRecord, RecordFailure> {
  const data = parseWithinLimits(text);
  if (!data.ok) return data;
  const head = headSchema.safeParse(data.value);
  if (!head.success) return fail({ code: 'record/other-format' });
  const version = versionSchema.safeParse(head.data.version);
  if (!version.success) return fail({ code: 'record/unknown-version' });
  if (version.data > RECORD_VERSION)
    return fail({ code: 'record/newer-version', version: version.data, newest: RECORD_VERSION });
  const current = migrated(data.value, version.data);
  if (!current.ok) return current;
  const record = validated(current.value);
  if (!record.ok) return record;
  const fault = crossFault(record.value);
  return fault ? fail(fault) : record;
}

function parseWithinLimits(text: string): Result<unknown, RecordFailure> {
  const data = parseBoundedJson(text, { characters: RECORD_LIMIT_CHARACTERS, depth: RECORD_LIMIT_DEPTH });
  if (data.ok) return data;
  switch (data.failure.code) {
    case 'json/too-large':
      return fail({ ...data.failure, code: 'record/too-large' });
    case 'json/too-deep':
      return fail({ ...data.failure, code: 'record/too-deep' });
    case 'json/not-json':
      return fail({ code: 'record/not-json' });
  }
}

function migrated(data: unknown, from: number): Result<unknown, RecordFailure> {
  let current = data;
  for (let version = from; version < RECORD_VERSION; version++) {
    const step = MIGRATIONS.get(version);
    if (!step) return fail({ code: 'record/unknown-version' });
    current = step(current);
  }
  return ok(current);
}

function validated(data: unknown): Result<InspectionRecord, RecordFailure> {
  const parsed = parsedWithinStack(data);
  if (parsed === null) return fail({ code: 'record/too-many-faults' });
  if (parsed.success) return ok(parsed.data);
  const [issue] = parsed.error.issues;
  if (!issue) return fail({ code: 'record/too-many-faults' });
  const path = pathText(issue.path);
  if (issue.code === 'unrecognized_keys')
    return fail({ code: 'record/unknown-key', path, key: (issue.keys[0] ?? '').slice(0, 64) });
  return fail({ code: 'record/invalid', path, problem: problemOf(issue, data) });
}

/** zod hands a list's faults on as call arguments: a hundred thousand of them overflow the stack. */
function parsedWithinStack(data: unknown): ReturnType<typeof recordSchema.safeParse> | null {
  try {
    return recordSchema.safeParse(data);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function problemOf(issue: z.core.$ZodIssue, data: unknown): Problem {
  if (valueAt(data, issue.path) === undefined) return 'missing';
  switch (issue.code) {
    case 'too_small':
      return 'too-small';
    case 'too_big':
      return 'too-large';
    case 'invalid_value':
    case 'invalid_union':
      return 'not-one-of';
    case 'invalid_format':
      return 'wrong-form';
    default:
      return 'wrong-kind';
  }
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Readonly<Record<PropertyKey, unknown>>)[key];
  }
  return value;
}

function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');
}
