/**
 * Two readers' marks on the same frames, compared.
 *
 * Model    d = second - first; U(d) = k sqrt(m1^2 + m2^2), k = 1.96, m the standard uncertainty that a reader's own marks
 *          contribute (budget group 'marks'); En = d / U(d); they agree where |En| <= 1.
 * Assumes  what the readers share (frames, tape, arm length, camera, the mechanism's priors) errs for both alike and falls out
 *          of the difference. With it in U(d), En would come out too small and any two readers would agree.
 * Fails    where one of them has no value: no comparison of that quantity.
 * Source   En number: ISO 13528, ISO/IEC 17043 (from memory).
 */
import { z } from 'zod';
import { QUANTITIES, type RecordedResult, type Results } from '../evidence/results.ts';

const K95 = 1.96;

export const comparisonSchema = z
  .strictObject({
    wheelEnd: z.string().max(64),
    measurement: z.string().max(64),
    quantity: z.enum(QUANTITIES),
    first: z.number(),
    second: z.number(),
    difference: z.number(),
    /** Expanded uncertainty of the difference at 95 %, from what the readers do not share. */
    U95: z.number().positive(),
    En: z.number(),
    agrees: z.boolean(),
  })
  .readonly();

export type Comparison = z.infer<typeof comparisonSchema>;

export function comparisonsOf(first: readonly RecordedResult[], second: Results): readonly Comparison[] {
  return second.results.flatMap((result) => {
    const { wheelEnd, measurement } = result.row;
    const other = first.find(({ row }) => row.wheelEnd === wheelEnd && row.measurement === measurement);
    return other ? QUANTITIES.flatMap((quantity) => compared(other, result, quantity)) : [];
  });
}

function compared(
  a: RecordedResult,
  b: RecordedResult,
  quantity: (typeof QUANTITIES)[number],
): readonly Comparison[] {
  const [first, second] = [a.quantities?.[quantity], b.quantities?.[quantity]];
  if (!first || !second) return [];
  const U95 = K95 * Math.hypot(ownPart(first), ownPart(second));
  if (!(U95 > 0)) return [];
  const difference = second.value - first.value;
  const En = difference / U95;
  const { wheelEnd, measurement } = b.row;
  const values = { first: first.value, second: second.value, difference, U95, En };
  return [{ wheelEnd, measurement, quantity, ...values, agrees: Math.abs(En) <= 1 }];
}

function ownPart({
  budget,
}: {
  readonly budget: readonly { readonly group: string; readonly u: number }[];
}): number {
  return budget.find(({ group }) => group === 'marks')?.u ?? 0;
}
