import { useEffect, useState } from 'react';
import type { StoredFile } from '../../recheck/read-container.ts';
import type { Recheck } from '../../recheck/recheck.ts';
import { RECHECK } from '../words/recheck.ts';

type Props = { readonly file: File; readonly found: Recheck };

/** Shown as pictures and nothing else: a browser runs nothing that it was told is a JPEG. */
export function Stills({ file, found: { stored } }: Props) {
  const stills = stored.filter(({ path }) => path.startsWith('stills/'));
  if (stills.length === 0) return null;
  return (
    <section aria-labelledby="recheck-stills" className="recheck-part">
      <h2 id="recheck-stills">{RECHECK.stills}</h2>
      <ul className="stills">
        {stills.map((still) => (
          <li key={still.path}>
            <StillPicture file={file} still={still} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function StillPicture({
  file,
  still: { path, from, sizeBytes },
}: {
  readonly file: File;
  readonly still: StoredFile;
}) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file.slice(from, from + sizeBytes, 'image/jpeg'));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file, from, sizeBytes]);
  const name = path.slice('stills/'.length, -'.jpg'.length).replaceAll('-', ' ');
  return (
    <figure>
      {address ? <img src={address} alt={name} loading="lazy" /> : null}
      <figcaption className="quiet">{name}</figcaption>
    </figure>
  );
}
