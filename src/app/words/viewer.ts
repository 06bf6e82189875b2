/** The viewer's own words, English. */
import type { ViewerMark } from '../viewer/viewer-mark.ts';

export const VIEWER_WORDS = {
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  fit: 'Fit',
  fitLong: 'Fit the whole picture',
  marks: 'Marks',
  magnification: 'Magnification',
} as const;

export function markLabel(mark: ViewerMark, pictureLabel: string): string {
  const where = `${mark.name}, ${lowerFirst(pictureLabel)}. x ${mark.xPx.toFixed(1)}, y ${mark.yPx.toFixed(1)} px`;
  const automatic = mark.automatic ? ['automatic'] : [];
  return [where, ...automatic, ...(mark.doubtful ? ['doubtful'] : [])].join(', ');
}

/** The turned cross tells an automatic mark; the word comes when it is selected, so that words do not crowd the picture. */
export function nameOnPicture(mark: ViewerMark): string {
  const automatic = mark.automatic && mark.selected ? ['automatic'] : [];
  return [mark.name, ...automatic, ...(mark.doubtful ? ['doubtful'] : [])].join(', ');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
