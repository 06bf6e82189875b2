/** Tie points found by a search: what is said about them, and why none were found. */
import type { TieFailure } from '../../vision/tie-sight.ts';
import type { TieSearchFailure } from '../ties/ties-store.ts';
import { pictureFailureText } from './failures-pictures.ts';

export const TIES = {
  heading: 'Tie points by search',
  begin: 'Find tie points in both pictures',
  again: 'Find them anew',
  stop: 'Stop',
  underWay: 'Comparing both pictures …',
  why: 'Fixed things that both pictures show are marked by themselves; marks of yours stay. Rod, arm and what is held are left out by your marks: place the camshaft end and the reference first.',
  needs: 'Mark chamber face and clevis pin on both pictures first.',
  found: (count: number) =>
    `${count} tie points found and marked, small and turned. Look whether one sits on something that moves; remove it then.`,
};

export function tieFailureText(failure: TieSearchFailure): string {
  return isTieFailure(failure) ? searchFailureText(failure) : pictureFailureText(failure);
}

const isTieFailure = (failure: TieSearchFailure): failure is TieFailure =>
  failure.code.startsWith('vision/') || failure.code.startsWith('ties/');

function searchFailureText(failure: TieFailure): string {
  switch (failure.code) {
    case 'ties/few': {
      const { found, counts } = failure;
      const seen = `${counts.features[0]} and ${counts.features[1]} places looked at, ${counts.alike} alike, ${counts.agreeing} of them fixed and near the brake, ${found} sure`;
      return `No tie points set: six are needed (${seen}). Take the second picture from nearly the same place, in the same light, sharp; or mark tie points by hand.`;
    }
    case 'vision/forbidden':
      return 'This page’s server does not let the search start. Mark tie points by hand, and tell whoever keeps the server.';
    case 'vision/not-loaded':
      return 'The search program did not arrive. Try again with a network; after that it works without.';
    case 'vision/not-started':
      return `The search did not start within ${failure.limitS} seconds. Try again with a better network.`;
    case 'vision/stalled':
      return `The search did not end within ${failure.limitS} seconds. Close other programs and search again, or mark tie points by hand.`;
    case 'vision/parts-missing':
    case 'vision/opencv-failed':
      return 'The search broke off. Close other programs and search again, or mark tie points by hand.';
  }
}
