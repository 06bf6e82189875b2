/** Photos of the calibration board and what was found in them, as long as the page lives. The photos themselves are not kept. */
import { createStore } from 'zustand/vanilla';
import type { FoundBoardCorner } from '../../adjustment/board-sights.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { VisionFailure } from '../../vision/vision-failure.ts';

export type BoardSearchFailure = VisionFailure | CaptureFailure | { readonly code: 'camera/not-a-photo' };

/** In pixels of the upright picture. */
export type BoardSighting = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rotationDeg: 0 | 90 | 180 | 270;
  readonly corners: readonly FoundBoardCorner[];
  /** Closed with the photo. */
  readonly small: ImageBitmap;
};

export type BoardSearch =
  | { readonly is: 'waiting' }
  | { readonly is: 'under-way' }
  | { readonly is: 'done'; readonly sighting: BoardSighting }
  | { readonly is: 'failed'; readonly failure: BoardSearchFailure };

export type BoardPhoto = { readonly id: string; readonly file: File; readonly search: BoardSearch };

export type CameraState = { readonly shown: boolean; readonly photos: readonly BoardPhoto[] };

export function createCameraStore() {
  const store = createStore<CameraState>(() => ({ shown: false, photos: [] }));
  const setPhotos = (turn: (photos: readonly BoardPhoto[]) => readonly BoardPhoto[]) =>
    store.setState(({ photos }) => ({ photos: turn(photos) }));
  return {
    ...store,
    show: (shown: boolean) => store.setState({ shown }),
    add: (files: readonly File[]) =>
      setPhotos((photos) => [
        ...photos,
        ...files.map((file): BoardPhoto => ({ id: crypto.randomUUID(), file, search: { is: 'waiting' } })),
      ]),
    set: (id: string, search: BoardSearch) =>
      setPhotos((photos) => photos.map((photo) => (photo.id === id ? { ...photo, search } : photo))),
    leaveOut: (id: string) =>
      setPhotos((photos) => {
        for (const photo of photos) if (photo.id === id) close(photo);
        return photos.filter((photo) => photo.id !== id);
      }),
    clear: () =>
      setPhotos((photos) => {
        photos.forEach(close);
        return [];
      }),
  };
}

function close({ search }: BoardPhoto): void {
  if (search.is === 'done') search.sighting.small.close();
}

export const camera = createCameraStore();
