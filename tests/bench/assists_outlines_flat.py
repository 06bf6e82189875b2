"""Stills of the second renderer for the outline of the band: /usr/bin/python3 tests/bench/assists_outlines_flat.py FOLDER FIRST COUNT

As assists_marks_flat.py, but with chamber and band in so many facets that their rims are round, and with lugs, bolts and a bracket
across the band at places of their own. Each becomes FOLDER/flat-NUMBER.pgm with flat-NUMBER.json. Debian package: python3-opencv.
"""
import numpy as np
import tracking_scene
from assists_marks_flat import changes, graduations, inside, keep, make
from tracking_clips import Clip

RIM_X, RIM_R, FACETS = -54.0, 102.8, 60
chamber_of_few = tracking_scene.chamber


def draws(number):
    return np.random.default_rng(91_000 + number)


def chamber_round(rng):
    def chamber(b, body, d):
        tube = b.tube
        b.tube = lambda name, frame, kind, x0, x1, r, y=0.0, z=0.0, facets=7, **more: tube(name, frame, kind, x0, x1, r, y, z, FACETS if r > 50 else facets, **more)
        chamber_of_few(b, body, d)
        b.tube = tube
        for turn in (rng.uniform(-0.35, 0.35) + np.pi / 2, rng.uniform(-0.35, 0.35) - np.pi / 2):
            y, z = RIM_R * np.sin(turn), -RIM_R * np.cos(turn)
            b.flat("lug", "still", tracking_scene.tx.steel_band, (-69, y - 14, z - 6), (1, 0, 0), (0, 1, 0), (14, 28), rng.uniform(0.5, 1.1))
            b.disc("lug-bolt", "still", tracking_scene.tx.cast_iron, (-62, y + 8 * np.sign(y), z - 14), 8, (1, 0, 0), (0, 1, 0), rng.uniform(0.6, 1.2))
        if rng.random() < 0.4:
            y = rng.uniform(-80, 60)
            b.flat("hose", "still", tracking_scene.tx.glove, (-150, y, -RIM_R - 25), (1, rng.uniform(-0.4, 0.4), 0), (0, 1, 0), (260, rng.uniform(10, 26)), rng.uniform(0.5, 1.3))
    return chamber


def write(folder, number):
    tracking_scene.chamber = chamber_round(draws(number))
    clip = Clip(f"outlines-{number}", changes(number), furnished=False)
    marks = {k: px.tolist() for k, (_, px) in clip.marks_at(0.0).items()}
    r, t, eye = clip.camera.pose(0.0)
    see = lambda mm: clip.renderer.project(mm, r, t).tolist()
    angles = np.arange(120) * np.pi / 60
    rim = [see((RIM_X, RIM_R * np.cos(a), RIM_R * np.sin(a))) for a in angles]
    if not all(inside(clip, px) for px in [*marks.values(), *rim]) or eye[0] < 5 or clip.pin_visible(0.0) < 0.95:
        return False
    keep(folder, number, clip, {**marks, "rim": rim, "tapeGraduations": graduations(clip)})
    return True


if __name__ == "__main__":
    make(write)
