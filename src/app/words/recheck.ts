/** Words for rechecking a package. What a package holds is quoted as text and never taken for anything else. */
import type { Difference, NotReadable } from '../../recheck/difference.ts';
import type { Check, CheckName, Recheck } from '../../recheck/recheck.ts';
import { recordFailureText } from './failures-records.ts';
import { timeStampFaultText } from './time-stamp.ts';
import { sizeText } from './values.ts';

export const RECHECK = {
  back: 'Close the package',
  title: 'Recheck of an evidence package',
  working: 'Hashing every file and measuring again …',
  broken:
    'The recheck broke off: this package does something to the program that no package should. Do not rely on it.',
  questions: 'What was asked',
  compareKey:
    'Compare this key with the one that the sender told you by another way. Anybody can sign with a key of his own.',
  save: 'Save this recheck, signed',
  saveHint:
    'A file of its own with these answers and your own reading, if there is one. It names the package by its hash and is signed with this device’s key.',
  results: 'Results as the package gives them',
  columns: ['Wheel end', 'Stroke', 'Limit', 'Finding'],
  notMeasured: 'not measured',
  noLimit: 'no limit',
  stills: 'Annotated pictures',
};

export const ANSWER_NAMES: Readonly<Record<Check['answer'], string>> = {
  yes: 'Yes',
  no: 'No',
  'not checked': 'Not checked',
  none: 'None',
};

export const CHECK_QUESTIONS: Readonly<Record<CheckName, string>> = {
  container: 'Is the file put together as a package is, with nothing else in it?',
  files: 'Is every listed file there, and no other?',
  hashes: 'Is every file as it was when the package was made?',
  signature: 'Does the signature fit?',
  timeStamp: 'Does the time stamp fit?',
  record: 'Does the record open without contradiction?',
  history: 'Is the record’s history whole, and the record as it was sealed?',
  captures: 'Are the pictures those that were measured?',
  ruleSets: 'Are the limits those that this program holds?',
  results: 'Does measuring again give the same results?',
};

export const FINDING_NAMES = {
  'within limit': 'Within limit',
  'over limit': 'Over limit',
  'not decided': 'Not decided',
} as const;

export const PURPOSE_NAMES = { 'as-found': 'as found', 'after-repair': 'after repair' } as const;

export function verdictText({ holds, checks }: Recheck): string {
  if (holds) return 'This package holds in every point.';
  const { container, ...inside } = checks;
  const unread = Object.values(inside).every(({ answer }) => answer === 'not checked');
  if (container.answer === 'no' && unread)
    return 'This is no evidence package, or what was sent is not whole: nothing in it could be checked.';
  const no = Object.values(checks).filter(({ answer }) => answer === 'no').length;
  return `This package does not hold: ${no} of ${Object.keys(checks).length} questions ${no === 1 ? 'is' : 'are'} answered with no.`;
}

export function signedText(state: Recheck['signature']['state']): string {
  switch (state) {
    case 'good':
      return 'Signed with the key';
    case 'bad':
      return 'The signature does not fit. It names the key';
    case 'none':
      return 'There is no signature that can be read.';
  }
}

export const moreText = (count: number) => `and ${count} more`;

export function differenceText(difference: Difference): string {
  switch (difference.code) {
    case 'container/size':
      return `The file is ${sizeText(difference.sizeBytes)}: no package has this size.`;
    case 'container/end':
      return `At byte ${difference.atByte} the file does not end as a package does: it was cut, added to, or packed by another program. Ask for the file as it was saved.`;
    case 'container/too-many-files':
      return `It holds ${difference.files} files; no package holds more than ${difference.limit}.`;
    case 'container/header':
      return `The header of ${quoted(difference.path)} is not as it must be, at byte ${difference.atByte}. The file was changed or packed by another program.`;
    case 'container/strange-name':
      return `A file in it wants to be called ${quoted(difference.path)}. No package has such a file.`;
    case 'container/name-twice':
      return `Two files in it are called ${quoted(difference.path)}.`;
    case 'container/checksum':
      return `${difference.path} was changed: its checksum does not fit.`;
    case 'files/not-readable':
    case 'signature/not-readable':
    case 'results/not-readable':
      return notReadableText(difference);
    case 'files/missing':
      return `${difference.path} is missing.`;
    case 'files/not-listed':
      return `${difference.path} is there and not listed: it was put in later.`;
    case 'files/out-of-order':
      return `${difference.path} is not in its place.`;
    case 'files/size':
      return `${difference.path} is ${difference.found} bytes; listed are ${difference.listed}.`;
    case 'hashes/differs':
      return `${difference.path} was changed.`;
    case 'signature/none':
      return 'The package has no signature.';
    case 'signature/does-not-fit':
      return 'The list of files was changed after it was signed, or signed by another key than it names.';
    case 'signature/other-key':
      return `It is signed with the key ${difference.found}, not with ${difference.asked}.`;
    case 'time-stamp/too-large':
    case 'time-stamp/not-readable':
    case 'time-stamp/refused':
    case 'time-stamp/other-hash':
    case 'time-stamp/algorithm':
    case 'time-stamp/no-certificate':
    case 'time-stamp/does-not-fit':
    case 'time-stamp/other-certificate':
    case 'time-stamp/wrong-purpose':
    case 'time-stamp/outside-validity':
    case 'time-stamp/not-trusted':
      return timeStampFaultText(difference);
    case 'record/does-not-open':
      return difference.failure.code === 'utf8/broken'
        ? 'The record is no text.'
        : recordFailureText(difference.failure);
    case 'history/none':
      return 'The record has no history.';
    case 'history/entry-open':
      return `Line ${difference.entry + 1} of the history is not sealed.`;
    case 'history/does-not-follow':
      return `Line ${difference.entry + 1} of the history does not follow from the one before it: a line was changed, cut or put in there.`;
    case 'history/not-sealed':
      return 'The history does not end with the making of the package.';
    case 'history/state-differs':
      return 'The record is not as it was when the package was made: something in it was changed since.';
    case 'captures/missing':
      return `The picture ${quoted(difference.fileName)} that the record speaks of is not in the package as it was measured.`;
    case 'captures/not-in-record':
      return `${difference.path} is a picture that the record does not know.`;
    case 'captures/facts-differ':
      return `${quoted(difference.fileName)}: the record says ${FACTS[difference.fact]} ${valueText(difference.recorded)}, the picture itself says ${valueText(difference.found)}.`;
    case 'rule-sets/not-held':
      return `This program does not hold the rule set ${quoted(difference.id)}.`;
    case 'rule-sets/differs':
      return `The rule set ${quoted(difference.id)} is not the one that this program holds.`;
    case 'rule-sets/not-listed':
      return `The package does not list the rule set ${quoted(difference.id)}.`;
    case 'results/too-many':
      return `The record holds ${difference.measurements} measurements; more than ${difference.limit} are not measured again here.`;
    case 'results/missing':
      return `${difference.wheelEnd}: the package gives no result for the measurement ${quoted(difference.measurement)}.`;
    case 'results/not-in-record':
      return `${difference.wheelEnd}: the package gives a result for ${quoted(difference.measurement)}, which the record does not hold.`;
    case 'results/differ':
      return `${difference.wheelEnd}, ${quoted(difference.measurement)}, ${difference.quantity}: the package says ${valueText(difference.recorded)}, measuring again gives ${valueText(difference.recomputed)}.`;
  }
}

const PROBLEMS: Readonly<Record<NotReadable['problem'], string>> = {
  missing: 'is missing',
  'too-large': 'is too large',
  'too-deep': 'is nested too deep',
  'not-text': 'is no text',
  'not-json': 'is damaged',
  'other-format': 'is something else than it should be',
  'newer-version': 'was made by a newer version of this program: load this page again with a network',
  invalid: 'is not as the format asks for',
};

function notReadableText({ path, problem, place }: NotReadable): string {
  return `${path} ${PROBLEMS[problem]}${place === '' ? '' : `, at ${place}`}.`;
}

const FACTS = { takenAt: 'taken at', focal35Mm: 'focal length (35 mm frame)' } as const;

const quoted = (text: string) => `“${text}”`;

function valueText(value: number | string | null): string {
  if (value === null || value === '') return 'nothing';
  return typeof value === 'number' ? String(Number(value.toPrecision(8))) : value;
}
