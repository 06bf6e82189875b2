import { useStore } from 'zustand';
import type { LengthUnit } from '../../basics/length-text.ts';
import { choices } from '../stores.ts';

export function useLengthUnit(): LengthUnit {
  return useStore(choices, (state) => state.lengthUnit);
}
