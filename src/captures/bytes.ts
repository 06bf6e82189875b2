/** One character a byte, zeros included; stops where the bytes stop. */
export function asciiAt(view: DataView, at: number, length: number): string {
  let text = '';
  for (let i = Math.max(at, 0); i < Math.min(at + length, view.byteLength); i++)
    text += String.fromCharCode(view.getUint8(i));
  return text;
}
