import type { LengthTextFailure } from '../../basics/length-text.ts';

export function lengthFailureText(failure: LengthTextFailure): string {
  switch (failure.code) {
    case 'length-text/empty':
      return 'Type a length, for instance 5 1/2.';
    case 'length-text/not-a-length':
      return 'This does not read as a length. Write 5 1/2, 5.5 or 140 mm.';
    case 'length-text/negative':
      return 'A length here is not negative. Leave the minus out.';
    case 'length-text/unknown-unit':
      return `“${failure.unit}” is not known here. Write in or mm.`;
    case 'length-text/denominator':
      return `No tape has ${failure.denominator}ths. Use halves to sixty-fourths, or a decimal.`;
    case 'length-text/improper-fraction':
      return `${failure.numerator}/${failure.denominator} is more than one. Put a space after the whole inches: 11 1/4.`;
    case 'length-text/fraction-of-mm':
      return 'A fraction of a millimetre? Write in after it if inches are meant.';
    case 'length-text/comma-ambiguous':
      return 'The comma can be read in two ways. Use a point for decimals and no comma for thousands.';
  }
}

export const TOO_SHORT = (least: string) => `That is too short: at least ${least} is expected here.`;
export const TOO_LONG = (most: string) => `That is too long: up to ${most} can be entered here.`;
