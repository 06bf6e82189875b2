/** The overlay over the frames of a clip with the curve beneath, and the annotated clip, in place of the app. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { FollowOverlay } from '../../../src/app/curve/FollowOverlay.tsx';
import { SaveAnnotated } from '../../../src/app/curve/SaveAnnotated.tsx';
import { StrokeCurve } from '../../../src/app/curve/StrokeCurve.tsx';
import { PictureCanvas } from '../../../src/app/viewer/PictureCanvas.tsx';
import { fittedView } from '../../../src/app/viewer/view-transform.ts';
import { createViewerStore } from '../../../src/app/viewer/viewer-store.ts';
import { strokeAndUText } from '../../../src/app/words/curve.ts';
import type { Capture } from '../../../src/captures/capture.ts';
import type { FrameSource } from '../../../src/frames/frame-source.browser.ts';
import type { truthClip } from './truth-clip.ts';
import '../../../src/app/viewer/viewer.css';

export type Followed = ReturnType<typeof truthClip> & {
  readonly capture: Capture;
  readonly blob: Blob;
  readonly source: FrameSource;
};

export function FollowedPage({
  followed,
  frame: first,
}: {
  readonly followed: Followed;
  readonly frame: number;
}) {
  const { measurement, track, source, capture, blob } = followed;
  const [frame, setFrame] = useState(first);
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  const stage = useRef<HTMLDivElement>(null);
  const store = useMemo(createViewerStore, []);
  useEffect(() => setFrame(first), [first]);
  useEffect(() => {
    const control = new AbortController();
    void source
      .picture(source.frames[frame] ?? null, control.signal)
      .then((answer) => answer.ok && setPicture(answer.value))
      .catch(() => undefined);
    return () => control.abort();
  }, [source, frame]);
  useEffect(() => {
    if (!stage.current || !picture) return;
    const { clientWidth, clientHeight } = stage.current;
    const size = { widthPx: picture.width, heightPx: picture.height };
    store.setState({ view: fittedView(size, { widthCss: clientWidth, heightCss: clientHeight }) });
  }, [store, picture]);
  const point = measurement.curve[frame];
  return (
    <main>
      <div className="viewer" style={{ height: 'auto', aspectRatio: '16 / 9' }}>
        <div ref={stage} className="viewer-stage">
          {picture ? (
            <>
              <PictureCanvas store={store} picture={picture} />
              <FollowOverlay
                store={store}
                track={track}
                frame={frame}
                drawing={measurement.drawings[frame] ?? null}
                text={point?.stroke ? strokeAndUText(point.stroke, 'mm') : null}
              />
            </>
          ) : null}
        </div>
      </div>
      <StrokeCurve measurement={measurement} limitMm={50.8} unit="mm" frame={frame} onFrame={setFrame} />
      <SaveAnnotated
        write={async (signal, onProgress) => {
          const { annotatedClip } = await import('../../../src/app/curve/annotated-clip.browser.ts');
          const annotation = { track, measurement, unit: 'mm' } as const;
          return annotatedClip({ capture, blob, annotation, signal, onProgress });
        }}
      />
    </main>
  );
}
