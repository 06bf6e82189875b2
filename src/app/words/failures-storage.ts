import type { StorageFailure } from '../storage/storage-failure.ts';

export function storageFailureText(failure: StorageFailure): string {
  switch (failure.code) {
    case 'storage/refused':
      return 'This browser keeps nothing on this device (a private window, perhaps). You can work on: save the record to a file before you close the page.';
    case 'storage/full':
      return 'The space for this page on this device is full. You can work on: save the record to a file, then remove earlier inspections.';
  }
}
