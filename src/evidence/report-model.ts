/**
 * What a report says, part by part, in the order of its pages. All text is finished: numbers stand with their units and their U.
 * It holds no drawing and no picture: those are named by their key and handed to report-html.ts beside it.
 */
import type { EndState } from './state-mark.ts';

export type Fact = {
  readonly label: string;
  readonly value: string;
  /** Not said, out of range, a difference: to be seen at a glance. */
  readonly look?: boolean;
};

export type Part =
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | { readonly kind: 'lines'; readonly lines: readonly string[]; readonly look?: boolean }
  | { readonly kind: 'table'; readonly table: Table }
  | { readonly kind: 'drawing'; readonly key: string }
  /** Ruled lines to sign on, each with who is to sign. */
  | { readonly kind: 'signatures'; readonly names: readonly string[] }
  | { readonly kind: 'pictures'; readonly pictures: readonly PictureRef[]; readonly size: 'large' | 'small' };

export type Table = {
  /** Drawn before the first cell of each row. */
  readonly states?: readonly EndState[];
  /** Holds words that may be broken anywhere, as hashes. */
  readonly breaks?: boolean;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

export type PictureRef = {
  readonly key: string;
  readonly caption: string;
  /** Said in its place where the picture is not at hand. */
  readonly missing: string;
};

/** label: heading at the left of its parts; wide: above them; beside: its pictures at the right of the rest. */
export type Layout = 'label' | 'wide' | 'beside';

export type Section = {
  readonly heading: string;
  readonly parts: readonly Part[];
  readonly layout: Layout;
};

/** One wheel end: what counts first, large. */
export type WheelEndSheet = {
  readonly name: string;
  readonly state: EndState;
  readonly finding: string;
  readonly glance: readonly Fact[];
  /** Without pictures it takes no page of its own. */
  readonly brief: boolean;
  readonly sections: readonly Section[];
};

export type ReportModel = {
  readonly title: string;
  readonly aid: string;
  /** As in the corner of a drawing sheet. */
  readonly titleBlock: readonly Fact[];
  readonly summary: readonly Section[];
  readonly wheelEnds: readonly WheelEndSheet[];
  readonly closing: readonly Section[];
  /** Beside the page numbers. */
  readonly running: { readonly head: string; readonly foot: string; readonly page: PageWords };
};

/** 'Page 2 of 9': the words before and between the numbers. */
export type PageWords = { readonly before: string; readonly between: string };
