/**
 * The chain that makes a later edit of the history, or of the record behind its back, visible.
 *
 * Model    chain_i = SHA-256(chain_(i-1) + canonical JSON of entry i without its chainSha256), chain_(-1) the empty text;
 *          hashes are lower case hexadecimal, texts are hashed as UTF-8.
 *          A sealing entry holds stateSha256 = SHA-256 of the canonical JSON of the record without its history.
 * Assumes  entries are only ever appended. The chain tells that something was changed, not who changed it: whoever can
 *          write the file can seal it anew, so the chain stands under the package's signature.
 * Source   canonical JSON: RFC 8785 (from memory), see canonical-json.ts.
 */
import { canonicalJson } from '../basics/canonical-json.ts';
import type { HistoryEntry } from './history-entry.ts';
import type { InspectionRecord } from './record.ts';

export type Sha256OfText = (text: string) => string;

export type HistoryFault =
  | { readonly code: 'history/none' }
  /** Appended after the last sealing, or its hash was taken out. Entries count from 0. */
  | { readonly code: 'history/entry-open'; readonly entry: number }
  /** This entry was altered, or one before it was altered, cut or put in. */
  | { readonly code: 'history/does-not-follow'; readonly entry: number }
  /** The last entry seals nothing: the end of the history was cut, or more was done since. */
  | { readonly code: 'history/not-sealed'; readonly entry: number }
  | { readonly code: 'history/state-differs'; readonly entry: number };

/** Appends the sealing entry and chains every entry that is not yet. */
export function sealHistory(
  record: InspectionRecord,
  { at, by }: Pick<HistoryEntry, 'at' | 'by'>,
  sha256: Sha256OfText,
): InspectionRecord {
  const stateSha256 = sha256(stateText(record));
  const seal: HistoryEntry = { at, by, act: 'packaged', place: '', stateSha256, chainSha256: null };
  let before = '';
  const history = [...record.history, seal].map((entry) => {
    before = entry.chainSha256 ?? sha256(before + entryText(entry));
    return { ...entry, chainSha256: before };
  });
  return { ...record, history };
}

/** Of the record as it stands in the file, before any migration: the hashes were made of that. */
export function historyFaults(data: unknown, sha256: Sha256OfText): readonly HistoryFault[] {
  const history = historyOf(data);
  const last = history.length - 1;
  const seal = history[last];
  if (!seal) return [{ code: 'history/none' }];
  const faults: HistoryFault[] = [];
  let before = '';
  for (const [entry, member] of history.entries()) {
    const chain = (member as Partial<HistoryEntry>).chainSha256 ?? null;
    if (chain === null) faults.push({ code: 'history/entry-open', entry });
    else if (chain !== sha256(before + entryText(member)))
      faults.push({ code: 'history/does-not-follow', entry });
    before = chain ?? '';
  }
  const state = (seal as Partial<HistoryEntry>).stateSha256 ?? null;
  if (state === null) faults.push({ code: 'history/not-sealed', entry: last });
  else if (state !== sha256(stateText(data as object)))
    faults.push({ code: 'history/state-differs', entry: last });
  return faults;
}

function historyOf(data: unknown): readonly object[] {
  const history = (data as { readonly history?: unknown } | null)?.history;
  const isList =
    Array.isArray(history) && history.every((entry) => typeof entry === 'object' && entry !== null);
  return isList ? history : [];
}

function stateText(record: object): string {
  const { history: _history, ...state } = record as { readonly history?: unknown };
  return canonicalJson(state);
}

function entryText(entry: object): string {
  const { chainSha256: _chain, ...rest } = entry as Partial<HistoryEntry>;
  return canonicalJson(rest);
}
