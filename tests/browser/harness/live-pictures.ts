/** Counts what must be closed: decoded video frames and bitmaps. Put in place before anything is decoded. */
export function livePictures(): () => { readonly videoFrames: number; readonly bitmaps: number } {
  const videoFrames = new Set<VideoFrame>();
  const bitmaps = new Set<ImageBitmap>();

  globalThis.VideoDecoder = class extends VideoDecoder {
    constructor(init: VideoDecoderInit) {
      super({
        ...init,
        output(frame) {
          videoFrames.add(frame);
          init.output(frame);
        },
      });
    }
  };
  const closeFrame = VideoFrame.prototype.close;
  VideoFrame.prototype.close = function () {
    videoFrames.delete(this);
    closeFrame.call(this);
  };

  const transfer = OffscreenCanvas.prototype.transferToImageBitmap;
  OffscreenCanvas.prototype.transferToImageBitmap = function () {
    const bitmap = transfer.call(this);
    bitmaps.add(bitmap);
    return bitmap;
  };
  const create = globalThis.createImageBitmap;
  globalThis.createImageBitmap = async (image: ImageBitmapSource) => {
    const bitmap = await create(image);
    bitmaps.add(bitmap);
    return bitmap;
  };
  const closeBitmap = ImageBitmap.prototype.close;
  ImageBitmap.prototype.close = function () {
    bitmaps.delete(this);
    closeBitmap.call(this);
  };
  return () => ({ videoFrames: videoFrames.size, bitmaps: bitmaps.size });
}
