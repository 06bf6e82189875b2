import { useEffect, useRef } from 'react';
import type { Capture } from '../../captures/capture.ts';
import type { View } from '../../marks/view.ts';
import { useFrames } from '../media/use-frames.ts';
import { usePicture } from '../media/use-picture.ts';

const WIDTH_PX = 480;
const HEIGHT_PX = 320;
/** About the marks, so that the brake is seen and not the yard. */
const MARGIN = 0.35;

/** The brake of one view, small. */
export function ViewPicture({ view, capture }: { readonly view: View; readonly capture: Capture }) {
  const { picture } = usePicture(useFrames(capture), view.frame);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { marks } = view;
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!pen || !picture) return;
    const { x, y, width, height } = about(marks, picture);
    pen.drawImage(picture, x, y, width, height, 0, 0, WIDTH_PX, HEIGHT_PX);
  }, [picture, marks]);
  return <canvas ref={canvas} width={WIDTH_PX} height={HEIGHT_PX} />;
}

/** The part of the picture that holds the marks, in the canvas's proportions; the whole middle where there are none. */
function about(marks: View['marks'], picture: { readonly width: number; readonly height: number }) {
  const xs = marks.length > 0 ? marks.map(({ xPx }) => xPx) : [0, picture.width];
  const ys = marks.length > 0 ? marks.map(({ yPx }) => yPx) : [0, picture.height];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const wanted = Math.max(right - left, ((bottom - top) * WIDTH_PX) / HEIGHT_PX) * (1 + MARGIN);
  const width = Math.min(wanted, picture.width, (picture.height * WIDTH_PX) / HEIGHT_PX);
  const height = (width * HEIGHT_PX) / WIDTH_PX;
  const inside = (middle: number, size: number, all: number) =>
    Math.min(Math.max(0, middle - size / 2), all - size);
  return {
    x: inside((left + right) / 2, width, picture.width),
    y: inside((top + bottom) / 2, height, picture.height),
    width,
    height,
  };
}
