/** Words for times that contradict each other. */

import type { StampTimeNote } from '../../recheck/stamp-notes.ts';
import type { TimeNote } from '../../record/time-notes.ts';
import { positionName } from './inspection.ts';
import { quotedNames } from './values.ts';

export const TIME_NOTES_HEADING = 'Times that contradict each other';

export function timeNoteText(note: TimeNote | StampTimeNote): string {
  const by = spanText(note.byMs);
  switch (note.code) {
    case 'times/taken-after-added':
      return `${quotedNames(note.fileNames)}: taken after it was already here, by ${by} at least. One of the two clocks is wrong.`;
    case 'times/taken-before-inspection':
      return `${quotedNames(note.fileNames)}: taken ${by} or more before the inspection was begun here.`;
    case 'times/file-older-than-picture':
      return `${quotedNames(note.fileNames)}: the file was last written ${by} or more before the picture in it was taken. One of the two times is wrong.`;
    case 'times/file-written-later':
      return `${quotedNames(note.fileNames)}: the file was written again after the picture was taken, by ${by} at least: copied, or changed. What it was before, nothing here can tell.`;
    case 'times/file-after-added':
      return `${quotedNames(note.fileNames)}: last written after it was already here, by ${by}. One of the two clocks is wrong.`;
    case 'times/header-differs':
      return `${quotedNames(note.fileNames)}: the clip’s header and its camera differ by ${by} at least. It was converted or cut, or a clock was set.`;
    case 'times/pictures-far-apart':
      return `${positionName(note.position)}, ${PURPOSES[note.purpose]}: the pictures of one measurement were taken ${by} or more apart. The brake may have been changed between them.`;
    case 'times/repaired-before-found':
      return `${positionName(note.position)}: a picture after repair was taken ${by} or more before one as found.`;
    case 'times/measured-before-repair':
      return `${positionName(note.position)}: a picture after repair was taken ${by} or more before the repair was written down.`;
    case 'times/history-backwards':
      return `Line ${note.entry + 1} of the history is ${by} earlier than the one before it: the device’s clock was set back.`;
    case 'times/made-after-stamp':
      return `By the device’s clock the package was made ${by} or more after the authority had stamped it: the device’s clock is ahead.`;
  }
}

const PURPOSES = { 'as-found': 'as found', 'after-repair': 'after repair' } as const;

/** Rounded down: it is said as the least. */
function spanText(ms: number): string {
  const minutes = Math.floor(ms / 60_000);
  const [days, hours] = [Math.floor(minutes / 1440), Math.floor((minutes % 1440) / 60)];
  if (days > 0) return hours > 0 ? `${days} d ${hours} h` : `${days} d`;
  return hours > 0 ? `${hours} h ${minutes % 60} min` : `${minutes} min`;
}
