import { useStore } from 'zustand';
import { DEMO_SETS } from '../media/demo-sets.ts';
import { openDemo } from '../media/open-demo.ts';
import { openDemoInspection } from '../media/open-demo-inspection.ts';
import { media } from '../stores.ts';
import { DEMO_NAMES, FIRST } from '../words/en.ts';

export function DemoSets() {
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <fieldset className="demo">
      <legend>{FIRST.demoHeading}</legend>
      <button
        type="button"
        className="button wide"
        disabled={reading}
        onClick={() => void openDemoInspection()}
      >
        {FIRST.demoInspection}
      </button>
      <p className="quiet">{FIRST.demo}</p>
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
