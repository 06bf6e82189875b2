import { useEffect, useState } from 'react';

/** Files dropped anywhere on the page or pasted. Answers whether some are held over it now. */
export function useFilesIn(take: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const control = new AbortController();
    const { signal } = control;
    const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    document.addEventListener(
      'dragover',
      (event) => {
        if (!carriesFiles(event)) return;
        event.preventDefault();
        setOver(true);
      },
      { signal },
    );
    document.addEventListener(
      'dragleave',
      (event) => {
        if (event.relatedTarget === null) setOver(false);
      },
      { signal },
    );
    document.addEventListener(
      'drop',
      (event) => {
        setOver(false);
        if (!carriesFiles(event)) return;
        event.preventDefault();
        takeSome(event.dataTransfer?.files);
      },
      { signal },
    );
    document.addEventListener('paste', (event) => takeSome(event.clipboardData?.files), { signal });
    function takeSome(files: FileList | undefined) {
      if (files && files.length > 0) take([...files]);
    }
    return () => control.abort();
  }, [take]);
  return over;
}
