import type { View } from '../../marks/view.ts';
import { type PictureFault, pictureFaults } from '../../measurement/picture-faults.ts';
import { rodInPicture } from '../../measurement/rod-in-picture.ts';
import type { Assessment } from '../../record/results.ts';
import type { PictureQuality } from '../../vision/picture-quality.ts';

/** What is known of the picture by now: of its look, and, once marked, of where it was taken from. */
export function faultsOfPicture(
  view: View,
  quality: PictureQuality | null,
  { measurement }: Pick<Assessment, 'measurement'>,
): readonly PictureFault[] {
  const measured = measurement.ok ? measurement.value : null;
  const adjusted = measured?.rods.find(({ state }) => state === view.state) ?? null;
  const rod = rodInPicture(view, adjusted);
  const hasTape = view.marks.filter(({ kind }) => kind === 'tape-graduation').length > 1;
  return pictureFaults({
    blur: quality?.blur ?? null,
    light: quality?.light ?? null,
    glareShare: quality?.glareShare ?? null,
    scale: rod.ok ? { pxPerMm: rod.value.pxPerMm, known: adjusted !== null || hasTape } : null,
    sight: measured?.sights.find(({ state }) => state === view.state) ?? null,
  });
}
