/** What a chamber's looks prove, and what stays open. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { ChamberNote } from '../../record/chamber-notes.ts';
import type { LongSign } from '../../record/chamber-signs.ts';
import { lengthText, measuredLengthText } from './values.ts';

const SIGN_NAMES: Readonly<Record<LongSign, string>> = {
  'square-boss': 'square port boss',
  'trapezoid-tag': 'trapezoid tag',
  'letter-l': 'L on the housing',
};

const WHAT: Readonly<Record<Extract<ChamberNote, { code: 'chamber/cannot-tell' }>['what'], string>> = {
  portBoss: 'The port boss could not be told.',
  tag: 'Whether there is a tag could not be told.',
  brake: 'Service or spring brake could not be told.',
};

export function chamberNoteText(note: ChamberNote, unit: LengthUnit): string {
  switch (note.code) {
    case 'chamber/not-looked-at':
      return 'Nobody has looked at the port boss and the tag: without a sign of long stroke the standard limit is used, the lower one.';
    case 'chamber/cannot-tell':
      return WHAT[note.what];
    case 'chamber/looks-long':
      return `Looks like long stroke (${note.signs.map((sign) => SIGN_NAMES[sign]).join(', ')}), and standard is chosen: the standard limit is used, the lower one. Look again.`;
    case 'chamber/long-against-looks':
      return 'Long stroke is chosen, and neither boss, tag nor marking shows it: the stroke must hold against both limits.';
    case 'chamber/long-without-sign':
      return 'Long stroke is chosen, and no sign of it is in the record: note the square boss, the trapezoid tag or the L.';
    case 'chamber/no-photo-of-sign':
      return 'Keep a photo of the sign of long stroke: it is the proof.';
    case 'chamber/stroke-letter-differs':
      return `The letter ${note.letter} on the housing goes with a limit of ${lengthText(note.limitMm, unit)} (second-hand), and another one is used. Look again at size and stroke.`;
    case 'chamber/stroke-letter-not-known':
      return `The letter ${note.letter} on the housing may tell the stroke; its limit is not known here. Ask the maker’s list.`;
    case 'chamber/band-contradicts':
      return `The band measures ${measuredLengthText({ value: note.measuredMm, U95: note.U95Mm }, unit)} across in the picture, and the chosen type has ${lengthText(note.tableMm, unit)}. ${note.fits.length > 0 ? `It fits type ${note.fits.join(' or ')}.` : 'It fits no type of this kind.'} Check the type and the reference.`;
  }
}
