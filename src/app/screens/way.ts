/** The screens that lie between the first one and the one that is shown: a phone's back button takes the last of them away. */
import { camera } from '../camera/camera-store.ts';
import { recheck } from '../recheck/recheck-store.ts';
import { work } from '../stores.ts';
import { currentOf } from '../work/current.ts';
import type { OpenWork } from '../work/work-store.ts';

export type Shown = {
  readonly open: OpenWork | null;
  readonly isCamera: boolean;
  readonly isRecheck: boolean;
};

/** Names, from the outermost on; the first screen is none of them. */
export function wayOf({ open, isCamera, isRecheck }: Shown): readonly string[] {
  const way = open ? wayInRecord(open) : [];
  if (isCamera) way.push('camera');
  if (isRecheck) way.push('recheck');
  return way;
}

function wayInRecord(open: OpenWork): string[] {
  const { screen, target } = open.place;
  if (screen === 'report') return ['inspection', 'report'];
  const wheelEnd = `wheel-end ${target.wheelEndId}`;
  if (currentOf(open)) return ['inspection', wheelEnd, `measuring ${target.measurementId}`];
  return screen === 'wheel-end' ? ['inspection', wheelEnd] : ['inspection'];
}

/** One screen up, as the button in the bar goes. */
export function goUp(): void {
  const { open } = work.getState();
  if (recheck.getState().file) recheck.close();
  else if (camera.getState().shown) camera.show(false);
  else if (open && currentOf(open)) work.showWheelEnd(open.place.target.wheelEndId ?? '');
  else if (open?.place.screen === 'wheel-end' || open?.place.screen === 'report')
    work.showScreen('inspection');
  else work.closeRecord();
}
