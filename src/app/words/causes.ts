/** What can be wrong with a brake whose stroke is too long, in the words of the trade. */
import type { Cause } from '../../finding/causes.ts';

export const CAUSE_NAMES: Readonly<Record<Cause, string>> = {
  'adjuster-worn': 'Adjuster worn or seized',
  'adjuster-mounting': 'Adjuster’s anchor or control arm loose or bent',
  'adjuster-set-wrong': 'Adjuster installed or set wrong',
  'clevis-worn': 'Clevis pin or bushing worn',
  'push-rod-length': 'Push rod too long or too short',
  'push-rod-bent': 'Push rod bent or rubbing',
  'chamber-loose': 'Chamber or its bracket loose or cracked',
  'chamber-wrong': 'Wrong chamber',
  'arm-length-wrong': 'Wrong arm length',
  'camshaft-bushing-worn': 'Camshaft bushing worn',
  'camshaft-bent-or-dry': 'Camshaft bent or dry',
  'linings-worn': 'Linings worn',
  'drum-worn': 'Drum worn or oversize',
  'shoe-spring-broken': 'Shoe spring or roller broken',
  other: 'Another cause',
  'not-found': 'No cause found',
};
