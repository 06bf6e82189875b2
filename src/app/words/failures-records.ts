import type { Problem, RecordFailure } from '../../record/record-failure.ts';

/** Why a file does not open as a record. The work at hand is untouched by it, and each sentence says what to do. */
export function recordFailureText(failure: RecordFailure): string {
  switch (failure.code) {
    case 'record/too-large':
      return 'The file is far larger than any record. Choose the file that “Save record” made.';
    case 'record/not-json':
    case 'record/other-format':
    case 'record/too-deep':
      return 'This is no saved record of this program. Choose the file that “Save record” made.';
    case 'record/unknown-version':
      return 'The file does not say which version of the record it is. It was changed after saving: use an unchanged copy.';
    case 'record/newer-version':
      return `The record was saved by a newer version of this program (record version ${failure.version}, here up to ${failure.newest}). Load this page again with a network to bring it up to date.`;
    case 'record/invalid':
      return `The record is damaged: ${failure.path || 'the file'} ${PROBLEMS[failure.problem]}. Use an unchanged copy.`;
    case 'record/unknown-key':
      return `The record holds “${failure.key}” at ${failure.path || 'the top'}, which this version does not know. Use an unchanged copy.`;
    case 'record/too-many-faults':
      return 'The record is damaged in very many places. Use an unchanged copy.';
    case 'record/duplicate-id':
    case 'record/position-twice':
    case 'record/state-twice':
      return `The record contradicts itself: ${failure.path} is there twice. Use an unchanged copy.`;
    case 'record/capture-missing':
      return `The record contradicts itself: ${failure.path} names a picture that it does not list. Use an unchanged copy.`;
    case 'record/axle-missing':
      return `The record contradicts itself: ${failure.path} is axle ${failure.axle}, which the vehicle does not have. Use an unchanged copy.`;
    case 'record/profile-missing':
      return `The record contradicts itself: ${failure.path} names a camera that it does not list. Use an unchanged copy.`;
    case 'record/seed-missing':
      return `The record contradicts itself: ${failure.path} was followed from a mark that it does not hold. Use an unchanged copy.`;
    case 'record/track-uneven':
      return `The record contradicts itself: ${failure.path} does not give each frame one place. Use an unchanged copy.`;
    case 'record/clip-without-clock':
    case 'record/photo-with-clock':
    case 'record/clip-without-frame':
    case 'record/photo-with-frame':
    case 'record/frame-outside-clip':
      return `The record contradicts itself: ${failure.path} does not fit its photo or clip. Use an unchanged copy.`;
  }
}

const PROBLEMS: Readonly<Record<Problem, string>> = {
  missing: 'is missing',
  'wrong-kind': 'is of the wrong kind',
  'too-small': 'is too small',
  'too-large': 'is too large',
  'not-one-of': 'is none of the values it may have',
  'wrong-form': 'has the wrong form',
};
