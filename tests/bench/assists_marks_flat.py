"""Stills with known truth of the second renderer (flat pieces at true depths, tracking_scene.py):
/usr/bin/python3 tests/bench/assists_marks_flat.py FOLDER FIRST COUNT

Each becomes FOLDER/flat-NUMBER.pgm with flat-NUMBER.json. Debian package: python3-opencv.
"""
import json
import sys
import cv2
import numpy as np
from tracking_clips import Clip

INCH = 25.4


def changes(number):
    rng = np.random.default_rng(77_000 + number)
    draw = lambda low, high: float(low + (high - low) * rng.random())
    return {
        "f_over_w": draw(0.7, 0.85), "distance": draw(560, 900), "yaw": draw(-30, 30), "lift": draw(-15, 15), "roll": draw(-8, 8),
        "aim": (draw(90, 120), draw(30, 60), 0.0), "down_y": int(rng.choice([-1, 1])), "shake": 0.0, "frames": 1,
        "applications": [(-2.0, 0.4, 90.0, 0.3, draw(0, 1))], "contrast": draw(0.55, 1.25), "noise": draw(1.2, 4.5),
        "look": str(rng.choice(["worn", "clean"])), "tape_turn": draw(-3, 3), "pin_x": draw(115, 140),
    }


def stroke_of(clip, inches):
    """A graduation's middle line over the blade, from the edge inwards, in pixels."""
    r, t, _ = clip.camera.pose(0.0)
    foot = clip.tape["zero"] + clip.tape["along"] * inches * INCH
    return [clip.renderer.project(foot + clip.tape["across"] * w, r, t) for w in range(7)]


def inside(clip, px):
    return 20 < px[0] < clip.w - 20 and 20 < px[1] < clip.h - 20


def graduations(clip):
    """Each quarter inch whose edge is inside the picture."""
    strokes = [(i / 4, stroke_of(clip, i / 4)) for i in range(1, 48)]
    return [{"inches": i, "px": line[0].tolist(), "strokePx": [p.tolist() for p in line]} for i, line in strokes if inside(clip, line[0])]


def keep(folder, number, clip, truth):
    clip.furnish()
    cv2.imwrite(f"{folder}/flat-{number}.pgm", clip.picture(0.0, 0))
    with open(f"{folder}/flat-{number}.json", "w") as file:
        json.dump({"number": number, "widthPx": clip.w, "heightPx": clip.h, **truth}, file)


def make(write):
    """As the command line asks; write tells whether the scene shows everything."""
    folder, first, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    made = [number for number in range(first, first + count) if write(folder, number)]
    print(f"{len(made)} of {count} made: the others do not show everything")


def write(folder, number):
    clip = Clip(f"still-{number}", changes(number), furnished=False)
    marks = {k: px.tolist() for k, (_, px) in clip.marks_at(0.0).items()}
    seen = graduations(clip)
    if not all(inside(clip, px) for px in marks.values()) or len(seen) < 36 or clip.pin_visible(0.0) < 0.95:
        return False
    keep(folder, number, clip, {**marks, "tapeGraduations": seen})
    return True


if __name__ == "__main__":
    make(write)
