import { useState } from 'react';
import { useStore } from 'zustand';
import type { InspectionRecord } from '../../record/record.ts';
import { work } from '../stores.ts';
import { BAR } from '../words/en.ts';
import { CautionsDialog } from './CautionsDialog.tsx';
import { saveRecordFile } from './save-record-file.ts';

type Props = {
  readonly record: InspectionRecord;
  readonly back: string;
  readonly onBack: () => void;
};

export function TopBar({ record, back, onBack }: Props) {
  const canUndo = useStore(work, ({ open }) => (open?.history.past.length ?? 0) > 0);
  const canRedo = useStore(work, ({ open }) => (open?.history.future.length ?? 0) > 0);
  const [cautions, setCautions] = useState(false);
  return (
    <div className="top-bar" role="toolbar" aria-label={BAR.label}>
      <button type="button" onClick={onBack}>
        {back}
      </button>
      <button type="button" disabled={!canUndo} onClick={work.undo}>
        {BAR.undo}
      </button>
      <button type="button" disabled={!canRedo} onClick={work.redo}>
        {BAR.redo}
      </button>
      <button type="button" onClick={() => saveRecordFile(record)}>
        {BAR.saveRecord}
      </button>
      <button type="button" onClick={() => setCautions(true)}>
        {BAR.cautions}
      </button>
      {cautions ? <CautionsDialog onClose={() => setCautions(false)} /> : null}
    </div>
  );
}
