"""Ends of pin and camshaft, released and applied, of the second renderer (flat pieces at true depths, tracking_scene.py):
/usr/bin/python3 tests/bench/assists_ends_flat.py FOLDER FIRST COUNT

Cut out of pictures of 1920 x 1080 as FOLDER/flat-ends-NUMBER-STATE-KIND.pgm, with FOLDER/flat-ends-NUMBER.json as assists-ends-render.mjs
writes it. Debian package: python3-opencv.
"""
import json
import sys
import cv2
import numpy as np
from assists_marks_flat import changes
from tracking_clips import Clip

KINDS = {"clevis-pin": ("clevisPin", 0.19), "camshaft-end": ("camshaftEnd", 0.34)}
RADIUS_MM = {"clevis-pin": 6.2, "camshaft-end": 17.4}


def specs(number):
    """The second picture is taken by hand anew, from about the same place."""
    released = changes(number)
    rng = np.random.default_rng(55_000 + number)
    by = lambda key, sigma: released[key] + sigma * float(rng.standard_normal())
    aim = released["aim"]
    applied = {**released, "yaw": by("yaw", 3.4), "lift": by("lift", 3.4), "roll": by("roll", 3.0),
               "aim": (aim[0] + 12 * float(rng.standard_normal()), aim[1] + 12 * float(rng.standard_normal()), 0.0)}
    return {"released": {**released, "applications": []}, "applied": applied}


def shows_ends(clip):
    ends = [px for k, (_, px) in clip.marks_at(0.0).items() if k != "chamberFace"]
    return all(150 < px[0] < clip.w - 150 and 150 < px[1] < clip.h - 150 for px in ends)


def shots_of(number, folder):
    clips = {state: Clip(f"ends-{number}", spec, furnished=False) for state, spec in specs(number).items()}
    if not all(shows_ends(clip) for clip in clips.values()):
        return []
    clips["released"].furnish()
    clips["applied"].furnish(clips["released"])
    shots = []
    for state, clip in clips.items():
        marks = clip.marks_at(0.0)
        r, t, _ = clip.camera.pose(0.0)
        px = {k: v[1] for k, v in marks.items()}
        picture = clip.picture(0.0, 0 if state == "released" else 1)
        length = float(np.linalg.norm(px["clevisPin"] - px["chamberFace"]))
        for kind, (key, half) in KINDS.items():
            mm, at = marks[key]
            x0, y0 = [int(max(0, np.floor(c - half * length))) for c in at]
            x1, y1 = [int(np.ceil(c + half * length)) for c in at]
            name = f"flat-ends-{number}-{state}-{kind}.pgm"
            cv2.imwrite(f"{folder}/{name}", picture[y0:y1, x0:x1])
            inwards = clip.renderer.project(mm + np.array([0, 0, 1.0]), r, t) - at
            shots.append({
                "state": state, "kind": kind, "file": name, "placePx": [float(at[0] - x0), float(at[1] - y0)], "lengthPx": length,
                "marksPx": {"face": px["chamberFace"].tolist(), "pin": px["clevisPin"].tolist(), "camshaft": px["camshaftEnd"].tolist()},
                "inwardsPx": inwards.tolist(), "radiusMm": RADIUS_MM[kind], "pxPerMm": float(clip.camera.f / (r @ mm + t)[2]),
            })
    return shots


if __name__ == "__main__":
    folder, first, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    for number in range(first, first + count):
        shots = shots_of(number, folder)
        if shots:
            with open(f"{folder}/flat-ends-{number}.json", "w") as file:
                json.dump({"number": number, "shots": shots}, file)
