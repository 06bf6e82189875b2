import { useState } from 'react';
import { piecesOf } from '../../evidence/pieces.ts';
import { saveFile } from '../parts/save-file.ts';
import { HAND_OVER } from '../words/hand-over.ts';
import { sizeText } from '../words/values.ts';

type Props = { readonly file: Blob; readonly name: string };

/** What mail servers commonly take, with room for what mail adds. */
const SIZES_BYTES = [7e6, 15e6, 25e6] as const;

export function SavePieces({ file, name }: Props) {
  const [limitBytes, setLimit] = useState<number>(SIZES_BYTES[1]);
  if (file.size <= SIZES_BYTES[0]) return null;
  const pieces = piecesOf(name, file.size, limitBytes);
  return (
    <div className="form">
      <label className="field">
        <span>{HAND_OVER.pieceSize}</span>
        <select value={limitBytes} onChange={(event) => setLimit(Number(event.target.value))}>
          {SIZES_BYTES.map((bytes) => (
            <option key={bytes} value={bytes}>
              {sizeText(bytes)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="button"
        onClick={() => {
          for (const piece of pieces) saveFile(file.slice(piece.from, piece.to), piece.name);
        }}
      >
        {HAND_OVER.pieces}
      </button>
      <p className="quiet">{HAND_OVER.piecesHint(pieces.length)}</p>
    </div>
  );
}
