/** Screens that are fetched when they are gone to, or shortly before: the first view of the page does without them. */
import type { ComponentType } from 'react';

export type LaterScreen<Given extends object> = {
  /** Null where it was not fetched yet. */
  readonly fetched: () => ComponentType<Given> | null;
  readonly fetch: () => Promise<ComponentType<Given>>;
};

function laterScreen<Given extends object>(load: () => Promise<ComponentType<Given>>): LaterScreen<Given> {
  let loaded: ComponentType<Given> | null = null;
  return {
    fetched: () => loaded,
    fetch: async () => {
      loaded ??= await load();
      return loaded;
    },
  };
}

export const inspectionLater = laterScreen(
  async () => (await import('../inspection/InspectionScreen.tsx')).InspectionScreen,
);
export const wheelEndLater = laterScreen(
  async () => (await import('../wheel-end/WheelEndScreen.tsx')).WheelEndScreen,
);
export const workLater = laterScreen(async () => (await import('./WorkScreen.tsx')).WorkScreen);
export const recheckLater = laterScreen(
  async () => (await import('../recheck/RecheckScreen.tsx')).RecheckScreen,
);
export const cameraLater = laterScreen(async () => (await import('../camera/CameraScreen.tsx')).CameraScreen);

/** As a hand goes to them. Where this fails they are asked for again when they are gone to, and it is told there. */
export function fetchScreens(): void {
  for (const { fetch } of [inspectionLater, wheelEndLater, workLater, recheckLater, cameraLater])
    fetch().catch(() => undefined);
}
