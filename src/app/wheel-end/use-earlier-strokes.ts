import { useEffect, useState } from 'react';
import { type DatedStroke, unitHistory } from '../../record/unit-history.ts';
import type { Position } from '../../record/wheel-end.ts';
import { listHeads } from '../storage/kept-records.ts';
import { work } from '../stores.ts';

const NONE: readonly DatedStroke[] = [];

/** Of the same unit and place, from the other inspections on this device, oldest first. */
export function useEarlierStrokes(unit: string, { axle, side }: Position): readonly DatedStroke[] {
  const [strokes, setStrokes] = useState(NONE);
  useEffect(() => {
    let isWanted = true;
    void listHeads().then((heads) => {
      if (!isWanted || !heads.ok) return;
      const keptId = work.getState().open?.keptId;
      const here = unitHistory(
        unit,
        heads.value.filter(({ id }) => id !== keptId),
      ).find(({ position }) => position.axle === axle && position.side === side);
      setStrokes(here?.strokes ?? NONE);
    });
    return () => {
      isWanted = false;
    };
  }, [unit, axle, side]);
  return strokes;
}
