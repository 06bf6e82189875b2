import type { EndState } from '../../evidence/state-mark.ts';
import type { WheelEndState } from '../../record/purpose-results.ts';

/** What is only begun has no stroke to show. */
export function endStateOf(state: WheelEndState): EndState {
  switch (state) {
    case 'within limit':
      return 'within';
    case 'over limit':
      return 'over';
    case 'not decided':
      return 'open';
    case 'begun':
    case 'not-started':
      return 'none';
  }
}
