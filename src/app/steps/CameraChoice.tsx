import { profileFits } from '../../adjustment/camera-prior.ts';
import type { CameraProfile } from '../../captures/camera-profile.ts';
import { camera } from '../camera/camera-store.ts';
import { useKeptCameras } from '../camera/use-kept-cameras.ts';
import { Choice } from '../parts/Choice.tsx';
import { work } from '../stores.ts';
import { CAMERA, fitsText, keptCameraText } from '../words/camera.ts';
import type { Current } from '../work/current.ts';

/** Which camera took the pictures: one of those kept on this device or in the record, or none that is known. */
export function CameraChoice({ current }: { readonly current: Current }) {
  const [kept] = useKeptCameras();
  const { record, measurement } = current;
  const ofRecord = record.cameraProfiles.filter(({ id }) => !kept.some((profile) => profile.id === id));
  const set = (profile: CameraProfile | null) => work.act({ type: 'set-camera-profile', profile });
  return (
    <fieldset className="camera-choice">
      <legend>{CAMERA.chooser}</legend>
      <p className="quiet">{CAMERA.chooserHint}</p>
      <Choice
        label={CAMERA.none}
        hint={CAMERA.noneHint}
        group="camera"
        checked={measurement.cameraProfileId === null}
        onChange={() => set(null)}
      />
      {[...kept, ...ofRecord].map((profile) => (
        <Choice
          key={profile.id}
          label={profile.name}
          hint={hintOf(profile, current)}
          group="camera"
          checked={measurement.cameraProfileId === profile.id}
          onChange={() => set(profile)}
        />
      ))}
      <button type="button" className="button" onClick={() => camera.show(true)}>
        {CAMERA.open}
      </button>
    </fieldset>
  );
}

function hintOf(profile: CameraProfile, { record, measurement }: Current): string {
  const ids = new Set(measurement.views.map(({ captureId }) => captureId));
  const used = record.captures.filter(({ id }) => ids.has(id));
  const fitting = used.filter((capture) => profileFits(capture, profile)).length;
  return [keptCameraText(profile), fitsText(fitting, used.length, profile)].filter(Boolean).join('. ');
}
