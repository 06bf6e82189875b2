/** Words for clips of which the browser's player gave frames. */
import { quotedNames } from './values.ts';

export const playedText = (fileNames: readonly string[]) =>
  `Frames taken by the player: ${quotedNames(fileNames)}. The browser did not decode the clip; its player showed each frame and said which it is, which is less sure. Where nothing moves, the frame beside it shows the same.`;
