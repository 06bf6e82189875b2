/**
 * A rule set: the published table of adjustment limits as data, with its sources and dates.
 * Lengths stand in the file as the table prints them ('6 25/32' inches) and come out as exact inches: every one is a
 * whole number of thirty-seconds, which a double holds exactly.
 */
import { z } from 'zod';
import { fail, ok, type Result } from '../basics/result.ts';
import { CHAMBER_FAMILIES, STROKE_CLASSES } from './chamber.ts';
import { PROCEDURES } from './procedure.ts';
import { RULE_IDS, ruleTextSchema } from './rule-text.ts';

const id = z.string().min(1).max(64);
const text = z.string().min(1).max(400);
const date = z.iso.date().nullable();

const exactInches = z
  .string()
  .regex(/^(?:\d{1,2}|(?:\d{1,2} )?\d{1,2}\/(?:2|4|8|16|32))$/)
  .transform(inchesOfText);

function inchesOfText(printed: string): number {
  return printed
    .split(' ')
    .map((part) => part.split('/'))
    .reduce((sum, [upper, lower]) => sum + Number(upper) / Number(lower ?? 1), 0);
}

const pressureRangeSchema = z
  .strictObject({
    procedure: z.enum(PROCEDURES),
    /** Which reading of the reservoir gauge the range is for. */
    gauge: z.enum(['before', 'held']),
    fromPsi: z.number().positive(),
    toPsi: z.number().positive(),
    source: id,
  })
  .readonly();

const sourceSchema = z
  .strictObject({
    id,
    citation: text,
    edition: text,
    publishedOn: date,
    inForceFrom: date,
    /** How well we know it: text read, excerpt read, second-hand. */
    standing: text,
  })
  .readonly();

const rowLimitSchema = z
  .strictObject({
    strokeClass: z.enum(STROKE_CLASSES),
    /** Where the table gives this limit only to chambers of one rated stroke. */
    ratedStrokeIn: exactInches.nullable(),
    limitIn: exactInches,
    /** As the regulation prints it beside the inches; never used to measure. */
    printedLimitMm: z.number().positive(),
    /** The dated texts that print this limit. */
    sources: z.array(id).min(1).readonly(),
  })
  .readonly();

const rowSchema = z
  .strictObject({
    family: z.enum(CHAMBER_FAMILIES).exclude(['unlisted']),
    type: z.string().min(1).max(8),
    outsideDiameterIn: exactInches,
    printedDiameterMm: z.number().positive(),
    /** Rated stroke of the standard chamber: a longer one marks a long-stroke chamber. */
    standardRatedStrokeIn: exactInches.nullable(),
    /** A rated stroke that some texts call standard and others long. */
    ambiguousRatedStrokeIn: exactInches.nullable(),
    limits: z.array(rowLimitSchema).min(1).readonly(),
  })
  .readonly();

const ruleSetSchema = z
  .strictObject({
    format: z.literal('strokewitness-rule-set'),
    version: z.literal(1),
    id,
    title: text,
    jurisdiction: text,
    remark: text,
    sources: z.array(sourceSchema).min(1).readonly(),
    unlisted: z.strictObject({ shareOfRatedStroke: z.number().positive().max(1), source: id }).readonly(),
    ratedStrokeSource: id,
    /** How far before and after the limit an over-stroke mark may begin to show. */
    overStrokeMark: z
      .strictObject({
        earlyByUpToMm: z.number().min(0),
        lateByUpToMm: z.number().min(0),
        source: id,
        remark: text,
      })
      .readonly(),
    /** How far past the limit a brake counts as a whole defective brake at the roadside, and not as a half. */
    roadsideCount: z
      .strictObject({
        wholeBrakeFromIn: exactInches,
        /** Share of a combination's brakes from which on it is put out of service. */
        shareOfBrakes: z.number().positive().max(1),
        source: id,
      })
      .readonly(),
    pressure: z
      .strictObject({
        ranges: z.array(pressureRangeSchema).min(1).readonly(),
        /** Above this, strokes read long whatever the procedure. */
        tooHighFromPsi: z.number().positive(),
        tooHighSource: id,
      })
      .readonly(),
    /** Free stroke of a drum brake: usual range, and how far other makers let it go. */
    freeStroke: z
      .strictObject({
        leastIn: exactInches,
        mostIn: exactInches,
        source: id,
        mostElsewhereIn: exactInches,
        elsewhereSource: id,
      })
      .readonly(),
    /** Letters on a housing that tell its limit whatever its size; letters that we have not seen told are absent. */
    strokeLetters: z
      .strictObject({
        source: id,
        limits: z
          .array(z.strictObject({ letter: z.string().regex(/^[A-H]$/), limitIn: exactInches }).readonly())
          .readonly(),
      })
      .readonly(),
    rules: z.array(ruleTextSchema).readonly(),
    rows: z.array(rowSchema).min(1).readonly(),
  })
  .readonly()
  .superRefine((ruleSet, context) => {
    for (const message of contradictions(ruleSet)) context.addIssue({ code: 'custom', message });
  });

export type RuleSet = z.output<typeof ruleSetSchema>;
export type RuleSetRow = z.output<typeof rowSchema>;

export type RuleSetFailure =
  | { readonly code: 'rule-set/invalid'; readonly path: string; readonly detail: string }
  | { readonly code: 'rule-set/unknown'; readonly ruleSetId: string };

export function openRuleSet(data: unknown): Result<RuleSet, RuleSetFailure> {
  const parsed = ruleSetSchema.safeParse(data);
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0];
  return fail({
    code: 'rule-set/invalid',
    path: issue?.path.join('.') ?? '',
    detail: issue?.message ?? '',
  });
}

type Uncrossed = {
  readonly sources: readonly { readonly id: string }[];
  readonly unlisted: { readonly source: string };
  readonly ratedStrokeSource: string;
  readonly overStrokeMark: { readonly source: string };
  readonly roadsideCount: { readonly source: string };
  readonly pressure: {
    readonly ranges: readonly { readonly procedure: string; readonly source: string }[];
    readonly tooHighSource: string;
  };
  readonly freeStroke: { readonly source: string; readonly elsewhereSource: string };
  readonly strokeLetters: { readonly source: string };
  readonly rules: readonly { readonly id: string; readonly sources: readonly string[] }[];
  readonly rows: readonly RuleSetRow[];
};

function contradictions(ruleSet: Uncrossed): string[] {
  const known = new Set(ruleSet.sources.map((source) => source.id));
  const named = [
    ruleSet.unlisted.source,
    ruleSet.ratedStrokeSource,
    ruleSet.overStrokeMark.source,
    ruleSet.roadsideCount.source,
    ruleSet.pressure.tooHighSource,
    ...ruleSet.pressure.ranges.map(({ source }) => source),
    ruleSet.freeStroke.source,
    ruleSet.freeStroke.elsewhereSource,
    ruleSet.strokeLetters.source,
    ...ruleSet.rules.flatMap(({ sources }) => sources),
    ...ruleSet.rows.flatMap((row) => row.limits.flatMap((limit) => limit.sources)),
  ];
  const keys = ruleSet.rows.map((row) => `${row.family} ${row.type}`);
  const limitKeys = ruleSet.rows.flatMap((row) =>
    row.limits.flatMap((limit) =>
      limit.sources.map(
        (source) =>
          `${row.family} ${row.type} ${limit.strokeClass} ${limit.ratedStrokeIn ?? 'any'} ${source}`,
      ),
    ),
  );
  return [
    ...named.filter((source) => !known.has(source)).map((source) => `no source is called ${source}`),
    ...repeated([...ruleSet.sources.map((source) => source.id)]).map(
      (name) => `two sources are called ${name}`,
    ),
    ...repeated(ruleSet.pressure.ranges.map(({ procedure }) => procedure)).map(
      (procedure) => `two pressure ranges are for ${procedure}`,
    ),
    ...PROCEDURES.filter(
      (procedure) => !ruleSet.pressure.ranges.some((range) => range.procedure === procedure),
    ).map((procedure) => `no pressure range for ${procedure}`),
    ...repeated(ruleSet.rules.map((rule) => rule.id)).map((rule) => `two rules are called ${rule}`),
    ...RULE_IDS.filter((rule) => !ruleSet.rules.some((one) => one.id === rule)).map(
      (rule) => `no rule is called ${rule}`,
    ),
    ...repeated(keys).map((key) => `two rows are for ${key}`),
    ...repeated(limitKeys).map((key) => `two limits are for ${key}`),
    ...ruleSet.rows
      .filter((row) => !row.limits.some((limit) => limit.strokeClass === 'standard'))
      .map((row) => `no standard limit for ${row.family} ${row.type}`),
  ];
}

function repeated(names: readonly string[]): string[] {
  return names.filter((name, i) => names.indexOf(name) !== i);
}
