import type { PictureRef } from '../../evidence/report-model.ts';
import type { Frame } from '../../frames/frame.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { END, REPORT } from '../words/report.ts';
import { clipTimeText } from '../words/values.ts';

/** A picture with the file that it is from, and the instant where that is a clip. */
export function pictureRef(
  { captures }: InspectionRecord,
  key: string,
  { captureId, frame, name }: { captureId: string; frame: Frame | null; name: string },
): PictureRef {
  const capture = captures.find(({ id }) => id === captureId);
  const fileName = capture?.fileName ?? REPORT.notSaid;
  const instant = frame && capture?.clip ? clipTimeText(frame.timeTicks, capture.clip.ticksPerSecond) : '';
  return {
    key,
    caption: [name, END.source(fileName, instant)].filter((part) => part.trim() !== '').join(': '),
    missing: END.missing(fileName, capture?.sha256 ?? ''),
  };
}
