import { useState } from 'react';
import type { Calibration } from '../../adjustment/calibrate.ts';
import { type CameraProfile, NAME_CHARACTERS } from '../../captures/camera-profile.ts';
import { keepCamera } from '../storage/kept-cameras.ts';
import { notices, work } from '../stores.ts';
import { CAMERA, calibrationFailureText, RESULT_ROWS, usualName } from '../words/camera.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { useOpenWork } from '../work/use-work.ts';
import { camera } from './camera-store.ts';
import type { ShownCalibration } from './use-calibration.ts';

type Props = { readonly shown: ShownCalibration; readonly chosen: number; readonly onKept: () => void };

export function CalibrationResult({ shown: { used, calibrated }, chosen, onKept }: Props) {
  if (!calibrated) return null;
  return (
    <section aria-labelledby="camera-result" className="camera-part">
      <h2 id="camera-result">{CAMERA.result}</h2>
      {calibrated.ok ? (
        <Found calibration={calibrated.value} onKept={onKept} />
      ) : (
        <p className="look" role="alert">
          {calibrationFailureText(
            calibrated.failure,
            chosen,
            used.map(({ file }) => file.name),
          )}
        </p>
      )}
    </section>
  );
}

function Found({ calibration, onKept }: { readonly calibration: Calibration; readonly onKept: () => void }) {
  const inRecord = useOpenWork() !== null;
  const { pictureRmsPx: _, ...values } = calibration;
  const [typed, setTyped] = useState<string | null>(null);
  const name = typed ?? usualName(values, new Date().toISOString());

  async function keep() {
    const profile: CameraProfile = {
      ...values,
      id: crypto.randomUUID(),
      name: name.trim(),
      madeAt: new Date().toISOString(),
    };
    const kept = await keepCamera(profile);
    if (!kept.ok) {
      notices.tell('storage', storageFailureText(kept.failure));
      return;
    }
    camera.clear();
    if (inRecord) {
      work.act({ type: 'set-camera-profile', profile });
      camera.show(false);
    } else onKept();
  }

  return (
    <>
      <table className="values">
        <tbody>
          {RESULT_ROWS.map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>{row.text(values)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{CAMERA.noPromise}</p>
      <label className="field">
        <span>{CAMERA.name}</span>
        <input
          type="text"
          maxLength={NAME_CHARACTERS}
          autoComplete="off"
          value={name}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <button
        type="button"
        className="button main wide"
        disabled={name.trim() === ''}
        onClick={() => void keep()}
      >
        {inRecord ? CAMERA.keepAndUse : CAMERA.keep}
      </button>
    </>
  );
}
