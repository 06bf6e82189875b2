/** Handing a file to another program of the device, where the browser can. */
export function mayShare(content: Blob, fileName: string): boolean {
  return (
    typeof navigator.canShare === 'function' && navigator.canShare({ files: [named(content, fileName)] })
  );
}

export async function shareFile(content: Blob, fileName: string): Promise<void> {
  try {
    await navigator.share({ files: [named(content, fileName)] });
  } catch (thrown) {
    // The person thought better of it, or the other program did: nothing is lost.
    if (!(thrown instanceof DOMException)) throw thrown;
  }
}

function named(content: Blob, fileName: string): File {
  return new File([content], fileName, { type: content.type });
}
