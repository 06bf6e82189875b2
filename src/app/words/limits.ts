import type { LengthUnit } from '../../basics/length-text.ts';
import type { ChamberFamily } from '../../finding/chamber.ts';
import type { LimitFailure, LimitNote } from '../../finding/limit.ts';
import { lengthText } from './values.ts';

export const FAMILY_NAMES: Readonly<Record<ChamberFamily, string>> = {
  clamp: 'Clamp band',
  dd3: 'DD-3',
  bolt: 'Bolts',
  rotochamber: 'Rotochamber',
  unlisted: 'Not in the table',
};

export function limitFailureText(failure: LimitFailure): string {
  switch (failure.code) {
    case 'limit/chamber-unknown':
      return 'The chamber is not chosen yet, so there is no limit. Choose it in step “Chamber”.';
    case 'limit/type-not-listed':
      return `The table has no type ${failure.type} of this kind. Choose another type or “${FAMILY_NAMES.unlisted}”.`;
    case 'limit/no-long-stroke-listed':
      return `The table has no long-stroke limit for type ${failure.type}. Choose standard stroke.`;
    case 'limit/nothing-marked':
      return 'A chamber that is not in the table needs its rated stroke or the limit that its maker marked on it.';
  }
}

export function limitNoteText(note: LimitNote, unit: LengthUnit): string {
  const length = (mm: number) => lengthText(mm, unit);
  switch (note.code) {
    case 'limit/long-stroke-not-proven':
      return `As long stroke it would be ${length(note.longLimitMm)}; without a mark that proves it, the standard limit holds.`;
    case 'limit/rated-stroke-not-proven':
      return `With a rated stroke of ${length(note.ratedStrokeMm)} marked on it, the limit would be ${length(note.higherLimitMm)}.`;
    case 'limit/rated-stroke-ambiguous':
      return `A rated stroke of ${length(note.ratedStrokeMm)} is called standard by some texts and long by others. Look for the long-stroke mark.`;
    case 'limit/rated-stroke-suggests-long':
      return `${length(note.ratedStrokeMm)} is more than the standard rated stroke of ${length(note.standardRatedStrokeMm)}. Look for the long-stroke mark.`;
    case 'limit/rated-stroke-contradicts-long':
      return `${length(note.ratedStrokeMm)} is no more than the standard rated stroke of ${length(note.standardRatedStrokeMm)}: check “long stroke” and the number.`;
    case 'limit/long-against-looks':
      return 'Long stroke was chosen, yet the chamber shows no sign of it: the standard limit counts too.';
    case 'limit/editions-differ':
      return `Editions of the rule differ: ${length(note.lowerMm)} and ${length(note.higherMm)}. Both count here.`;
    case 'limit/marked-limit-differs':
      return `The maker marked ${length(note.markedLimitMm)}; for a listed chamber the table holds.`;
    case 'limit/rated-stroke-unknown':
      return 'The rated stroke is not known: only the maker’s limit is used.';
    case 'limit/marked-limit-unknown':
      return 'No limit of the maker is known: only the share of the rated stroke is used.';
  }
}
