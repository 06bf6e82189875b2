/** What is to be said about a chamber: what its looks prove, what could not be told, and where the picture contradicts the type. */
import { mmFromInches } from '../basics/units.ts';
import type { Chamber, ChamberFamily } from '../finding/chamber.ts';
import type { RuleSet, RuleSetRow } from '../finding/rule-set.ts';
import type { WithU } from '../measurement/measured.ts';
import { isLongAgainstLooks, type LongSign, longSigns, strokeLetter } from './chamber-signs.ts';
import { limitOf } from './results.ts';
import type { Identification, WheelEnd } from './wheel-end.ts';

export type ChamberNote =
  /** Neither boss nor tag was looked at, and this type comes as long stroke too. */
  | { readonly code: 'chamber/not-looked-at' }
  | { readonly code: 'chamber/cannot-tell'; readonly what: 'portBoss' | 'tag' | 'brake' }
  /** Looks long, standard was chosen: the standard limit, the lower one, is used. */
  | { readonly code: 'chamber/looks-long'; readonly signs: readonly LongSign[] }
  /** Long was chosen against the looks: both limits are kept. */
  | { readonly code: 'chamber/long-against-looks' }
  /** Long was chosen, and no sign of it is in the record. */
  | { readonly code: 'chamber/long-without-sign' }
  /** There is a sign of long stroke, and no photo of it. */
  | { readonly code: 'chamber/no-photo-of-sign' }
  /** The letter on the housing tells another limit than the one used, or one that we have not seen told. */
  | {
      readonly code: 'chamber/stroke-letter-differs';
      readonly letter: string;
      readonly limitMm: number;
    }
  | { readonly code: 'chamber/stroke-letter-not-known'; readonly letter: string }
  /** The band measures another size than the chosen type's. */
  | {
      readonly code: 'chamber/band-contradicts';
      readonly measuredMm: number;
      readonly U95Mm: number;
      readonly tableMm: number;
      /** Types of the same family that the measured diameter fits. */
      readonly fits: readonly string[];
    };

/** Bands differ from the table's diameter by paint, rust and make: 1 mm, common practice, no source. */
const U_OF_TABLE_MM = 1;

export function chamberNotes(
  wheelEnd: WheelEnd,
  bandDiameterMm: WithU | null,
  ruleSet: RuleSet | null,
): ChamberNote[] {
  const { chamber, identification } = wheelEnd;
  const notes = cannotTell(identification);
  if (chamber === null) return notes;
  const signs = longSigns(identification);
  const rows = ruleSet?.rows.filter(({ family }) => family === chamber.family) ?? [];
  const chosen = rows.find(({ type }) => type === chamber.type);
  const { portBoss, tag, captureId } = identification;
  if (portBoss === null && tag === null && chosen?.limits.some(isLong))
    notes.push({ code: 'chamber/not-looked-at' });
  if (chamber.strokeClass === 'standard' && signs.length > 0)
    notes.push({ code: 'chamber/looks-long', signs });
  if (chamber.strokeClass === 'long' && signs.length === 0)
    notes.push({
      code: isLongAgainstLooks(chamber, identification)
        ? 'chamber/long-against-looks'
        : 'chamber/long-without-sign',
    });
  if (signs.length > 0 && captureId === null) notes.push({ code: 'chamber/no-photo-of-sign' });
  if (ruleSet) notes.push(...letterNotes(wheelEnd, chamber, ruleSet));
  if (chosen && bandDiameterMm && hasBand(chamber.family))
    notes.push(...bandNotes(chosen, rows, bandDiameterMm));
  return notes;
}

function cannotTell(identification: Identification): ChamberNote[] {
  return (['portBoss', 'tag', 'brake'] as const)
    .filter((what) => identification[what] === 'cannot-tell')
    .map((what) => ({ code: 'chamber/cannot-tell', what }));
}

function letterNotes(wheelEnd: WheelEnd, chamber: Chamber, ruleSet: RuleSet): ChamberNote[] {
  const letter = strokeLetter(chamber, wheelEnd.identification);
  if (letter === null) return [];
  const told = ruleSet.strokeLetters.limits.find((one) => one.letter === letter);
  if (!told) return [{ code: 'chamber/stroke-letter-not-known', letter }];
  const limit = limitOf(wheelEnd, ruleSet);
  const isUsed = limit.ok && limit.value.values.some(({ limitIn }) => limitIn === told.limitIn);
  return isUsed
    ? []
    : [{ code: 'chamber/stroke-letter-differs', letter, limitMm: mmFromInches(told.limitIn) }];
}

function isLong({ strokeClass }: RuleSetRow['limits'][number]): boolean {
  return strokeClass === 'long';
}

function bandNotes(chosen: RuleSetRow, rows: readonly RuleSetRow[], measured: WithU): ChamberNote[] {
  const reachMm = Math.hypot(measured.U95, 1.96 * U_OF_TABLE_MM);
  const isNear = ({ outsideDiameterIn }: RuleSetRow) =>
    Math.abs(mmFromInches(outsideDiameterIn) - measured.value) <= reachMm;
  if (isNear(chosen)) return [];
  return [
    {
      code: 'chamber/band-contradicts',
      measuredMm: measured.value,
      U95Mm: measured.U95,
      tableMm: mmFromInches(chosen.outsideDiameterIn),
      fits: rows.filter(isNear).map(({ type }) => type),
    },
  ];
}

function hasBand(family: ChamberFamily): boolean {
  return family === 'clamp' || family === 'dd3' || family === 'rotochamber';
}
