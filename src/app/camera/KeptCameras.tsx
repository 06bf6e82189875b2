import type { CameraProfile } from '../../captures/camera-profile.ts';
import { dropCamera } from '../storage/kept-cameras.ts';
import { notices } from '../stores.ts';
import { CAMERA, keptCameraText } from '../words/camera.ts';
import { storageFailureText } from '../words/failures-storage.ts';

type Props = { readonly kept: readonly CameraProfile[]; readonly onDropped: () => void };

/** A record that uses a camera holds it itself: removing it here takes nothing from a record. */
export function KeptCameras({ kept, onDropped }: Props) {
  async function drop(id: string) {
    const dropped = await dropCamera(id);
    if (dropped.ok) onDropped();
    else notices.tell('storage', storageFailureText(dropped.failure));
  }
  return (
    <section aria-labelledby="camera-kept" className="camera-part">
      <h2 id="camera-kept">{CAMERA.kept}</h2>
      {kept.length === 0 ? <p className="quiet">{CAMERA.keptNone}</p> : null}
      <ul className="ruled">
        {kept.map((profile) => (
          <li key={profile.id} className="kept-camera">
            <span>
              <strong>{profile.name}</strong>
              <span className="quiet hint">{keptCameraText(profile)}</span>
            </span>
            <button
              type="button"
              className="button plain"
              aria-label={CAMERA.forgetOf(profile.name)}
              onClick={() => void drop(profile.id)}
            >
              {CAMERA.forget}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
