import { saveFile } from '../parts/save-file.ts';
import { SAVE_TABLE } from '../words/curve.ts';

type Props = {
  /** Made when it is asked for. */
  readonly table: () => string;
  readonly fileName: string;
};

export function SaveTable({ table, fileName }: Props) {
  return (
    <button
      type="button"
      className="button"
      onClick={() => saveFile(new Blob([table()], { type: 'text/csv;charset=utf-8' }), fileName)}
    >
      {SAVE_TABLE}
    </button>
  );
}
