import { useEffect, useRef } from 'react';
import type { Capture } from '../../captures/capture.ts';
import { useFrames } from '../media/use-frames.ts';
import { usePicture } from '../media/use-picture.ts';
import { pictureFailureText } from '../words/failures-pictures.ts';

type Props = { readonly capture: Capture; readonly label: string };

/** Screen pixels across; twice the space it fills on a phone. */
const WIDTH_PX = 720;

/** A photo that is shown and not measured on. */
export function CapturePhoto({ capture, label }: Props) {
  const source = useFrames(capture);
  const { picture, failure } = usePicture(source, null);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const element = canvas.current;
    if (!element || !picture) return;
    element.width = WIDTH_PX;
    element.height = Math.round((WIDTH_PX * picture.height) / picture.width);
    element.getContext('2d')?.drawImage(picture, 0, 0, element.width, element.height);
  }, [picture]);
  if (failure) return <p className="look">{pictureFailureText(failure)}</p>;
  return <canvas ref={canvas} className="capture-photo" role="img" aria-label={label} />;
}
