import { useRef } from 'react';

/** HEIC by name as well: some systems have no media type for it. */
export const PHOTO_FILES = 'image/*,.heic,.heif';
export const PICTURE_FILES = 'image/*,video/*,.heic,.heif';
export const RECORD_FILES = 'application/json,.json';

type Props = {
  readonly label: string;
  /** Left out where the endings are none that every system knows, as those of pieces: what it does not know it greys out. */
  readonly accept?: string;
  readonly multiple?: boolean;
  readonly main?: boolean;
  readonly disabled?: boolean;
  /** Opens it at once or later, for instance when the cautions were read. */
  readonly before?: (open: () => void) => void;
  readonly onFiles: (files: readonly File[]) => void;
};

export function FilePicker({ label, accept, multiple, main, disabled, before, onFiles }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const open = () => input.current?.click();
  return (
    <>
      <button
        type="button"
        className={main ? 'button main wide' : 'button'}
        disabled={disabled}
        onClick={() => (before ? before(open) : open())}
      >
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        multiple={multiple}
        aria-label={label}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // The same file chosen twice must arrive twice.
          event.target.value = '';
          if (files.length > 0) onFiles(files);
        }}
      />
    </>
  );
}
