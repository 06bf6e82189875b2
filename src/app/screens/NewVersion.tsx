import { useStore } from 'zustand';
import { newVersion } from '../new-version.ts';
import { NEW_VERSION } from '../words/en.ts';

/** Where nothing is under way: the list of inspections. */
export function NewVersion() {
  const take = useStore(newVersion, (state) => state.take);
  return (
    <div role="status" className="new-version">
      {take ? (
        <>
          <p>{NEW_VERSION.isHere}</p>
          <button type="button" className="button" onClick={take}>
            {NEW_VERSION.take}
          </button>
        </>
      ) : null}
    </div>
  );
}
