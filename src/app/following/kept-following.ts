/** What was seen so far of a clip, kept on the device until the whole of it has been followed. */
import type { Result } from '../../basics/result.ts';
import type { Correction } from '../../marks/track.ts';
import { database } from '../storage/database.ts';
import { attempt, type StorageFailure } from '../storage/storage-failure.ts';
import type { SeenSoFar } from './track-of.ts';

export type KeptFollowing = SeenSoFar & {
  /** Of the file, its frame and the question asked: another question is another following. */
  readonly key: string;
  /** The frame that a person put right, where it is followed from there; null: from the marked view. */
  readonly correction: Correction | null;
  /** A person stopped it: it does not go on by itself. */
  readonly stopped: boolean;
};

export function keepFollowing(kept: KeptFollowing): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    await (await database()).put('followings', kept);
  });
}

export function keptFollowing(key: string): Promise<Result<KeptFollowing | null, StorageFailure>> {
  return attempt(async () => (await (await database()).get('followings', key)) ?? null);
}

export function dropFollowing(key: string): Promise<Result<void, StorageFailure>> {
  return attempt(async () => (await database()).delete('followings', key));
}
