/** Words for the time stamp of an authority. */
import type { StampFailure } from '../../recheck/stamp-package.ts';
import type { TimeRootsFailure } from '../../recheck/time-roots.ts';
import type { TimeStamp, TimeStampFault } from '../../recheck/time-stamp.ts';
import { sizeText } from './values.ts';

export const TIME_STAMP = {
  heading: 'Times',
  optional: 'Time stamp by an authority (if asked for)',
  none: 'No time stamp: the times are those of the device and the cameras, and nobody attested them.',
  sentence:
    'An authority can attest when the package was there. Save the request, send it to the authority, and put its answer in. The request holds one hash and nothing of the package.',
  request: 'Save the request',
  answer: 'Put the answer in',
  savedAs: (name: string) => `Saved with its time stamp, as ${name}.`,
  authority: 'Authority',
  certificate: 'Its certificate, SHA-256',
  roots: 'Choose the authority’s root certificates',
  notRevoked: 'Whether the certificate was revoked is not checked: that needs a network.',
};

export function stampText({ time, accuracyMs }: TimeStamp): string {
  const when = `${time.slice(0, 10)} ${time.slice(11, 19)} UTC`;
  const within = accuracyMs === null ? '' : ` ± ${accuracyMs / 1000} s`;
  return `The list of files was there at ${when}${within}, by the authority’s clock.`;
}

export function trustText(trust: TimeStamp['trust']): string {
  switch (trust) {
    case 'not checked':
      return 'Authority not checked: anybody can make a certificate with any name. Choose the root certificates that you got from the authority itself.';
    case 'reaches a root':
      return 'Its certificate comes from a root that you chose.';
    case 'reaches no root':
      return 'Its certificate comes from none of the roots that you chose.';
  }
}

export function timeStampFaultText(fault: TimeStampFault): string {
  switch (fault.code) {
    case 'time-stamp/too-large':
      return `The time stamp is ${sizeText(fault.sizeBytes)}: none is that large.`;
    case 'time-stamp/not-readable':
      return 'The time stamp is damaged, or the file is something else.';
    case 'time-stamp/refused':
      return `The authority did not grant the time stamp (status ${fault.status}). Ask it why, then send the request again.`;
    case 'time-stamp/other-hash':
      return 'The time stamp is of something else, or of this package before it was made anew.';
    case 'time-stamp/algorithm':
      return `The time stamp uses an algorithm that is too weak or not known here (${fault.oid}). Ask the authority for SHA-256.`;
    case 'time-stamp/no-certificate':
      return 'The time stamp came without its certificate, so it cannot be checked without a network. Ask the authority for it.';
    case 'time-stamp/does-not-fit':
      return 'The signature of the time stamp does not fit: it was changed after the authority made it.';
    case 'time-stamp/other-certificate':
      return 'The certificate in the time stamp is not the one that it was signed with.';
    case 'time-stamp/wrong-purpose':
      return `The certificate of ${quoted(fault.authority)} is not one for time stamps alone.`;
    case 'time-stamp/outside-validity':
      return `The time stamp says ${fault.time}, and its certificate is good from ${fault.from} to ${fault.to}.`;
    case 'time-stamp/not-trusted':
      return `The certificate of ${quoted(fault.authority)} comes from none of the roots that were given.`;
  }
}

export function stampFailureText(failure: StampFailure): string {
  return failure.code === 'stamp/no-package' ? 'This is no whole package.' : timeStampFaultText(failure);
}

export function timeRootsFailureText({ code }: TimeRootsFailure): string {
  switch (code) {
    case 'time-roots/none':
      return 'This file holds no certificate. Choose a .pem, .crt or .cer file.';
  }
}

const quoted = (text: string) => `“${text}”`;
