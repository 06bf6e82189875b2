import { useStore } from 'zustand';
import { DEMO_SETS } from '../media/demo-sets.ts';
import { openDemo } from '../media/open-demo.ts';
import { media } from '../stores.ts';
import { DEMO_NAMES, FIRST } from '../words/en.ts';

export function DemoSets() {
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <fieldset className="demo">
      <legend>{FIRST.demo}</legend>
      <div className="row">
        {DEMO_SETS.map((demo) => (
          <button
            key={demo.folder}
            type="button"
            className="button"
            disabled={reading}
            onClick={() => void openDemo(demo)}
          >
            {DEMO_NAMES[demo.folder]}
          </button>
        ))}
      </div>
      <p className="quiet">{FIRST.demoHint}</p>
    </fieldset>
  );
}
