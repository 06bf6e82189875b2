"""Stills of the second renderer for the rod's edges: /usr/bin/python3 tests/bench/assists_rod_flat.py FOLDER FIRST COUNT

As assists_marks_flat.py, but the rod is round: one patch through its axis that faces the camera, as wide as the outline of the cylinder is
(half width r / cos(asin(r / d)), d from the camera to the axis), shaded as a round bar is. Drawn with it, at times: a line along the rod (rust,
shadow, a rubbed streak), a shadow across, a hose along or beside it, a boot over its inner end, a hole round it in the chamber's face, a tape held
nearer or farther away. Each becomes FOLDER/flat-NUMBER.pgm with flat-NUMBER.json. Debian package: python3-opencv.
"""
import numpy as np
import tracking_scene
import tracking_textures as tx
from assists_marks_flat import changes, inside, keep, make, stroke_of
from tracking_clips import Clip
from tracking_mechanism import ROD_R_MM, rotation

NAMED_INCHES = (1, 2, 3, 4, 5)
rod_of_facets, chamber_bare = tracking_scene.rod, tracking_scene.chamber


def draws(number):
    return np.random.default_rng(57_000 + number)


def spec_of(number):
    rng = draws(number)
    shown = changes(number)
    stroke = float(rng.uniform(0, 60)) if rng.random() < 0.6 else 0.0
    return {**shown, "stroke": stroke, "tape_before": float(rng.uniform(14, 34))}


def eye_from_rod(clip):
    """The camera's place in the rod's frame: origin at the pin, x outwards along the rod."""
    _, _, eye = clip.camera.pose(0.0)
    state = clip.wheel_end.state(clip.stroke(0.0))
    return rotation("z", state["rod_rad"]).T @ (eye - state["pin"])


def round_rod(rng, eye):
    """Values over the patch: light on a round bar, from where it comes, with a streak that mirrors."""
    to_eye = np.array([0.0, eye[1], eye[2]])
    away = np.linalg.norm(to_eye)
    across = np.cross([1.0, 0, 0], to_eye / away)
    half = ROD_R_MM / np.cos(np.arcsin(ROD_R_MM / away))
    lit, mirrored = rng.uniform(-1.3, 1.3), rng.uniform(-0.8, 0.8)
    shine, low = rng.uniform(0, 0.5), rng.uniform(0.25, 0.7)
    dull = rng.uniform(0.45, 1.25)
    line, line_at, line_wide = rng.random() < 0.4, rng.uniform(-0.8, 0.8), rng.uniform(0.03, 0.3)
    line_by, line_to = rng.uniform(-0.5, 0.5), rng.uniform(0.5, 1.0)
    crossed, crossed_by, crossed_at = rng.random() < 0.3, rng.uniform(0.3, 0.7), rng.uniform(0.2, 0.8)

    def shade(values):
        h, w = values.shape
        t = (np.arange(h) + 0.5) / h * 2 - 1
        turn = np.arcsin(t)
        light = low + (1 - low) * np.maximum(0, np.cos(turn - lit)) + shine * np.exp(-(((turn - mirrored) / 0.16) ** 2))
        values = values * (dull * light)[:, None]
        if line:
            values = values * (1 + line_by * (np.abs(t - line_at) < line_wide)[:, None] * (np.arange(w) / w < line_to)[None, :])
        if crossed:
            x = np.arange(w)[None, :] / w + 0.1 * t[:, None]
            values = values * (1 - crossed_by * np.clip((x - crossed_at) * 60, 0, 1))
        return values

    return across, half, shade


def rod_round(clip):
    rng = draws(clip.number + 500_000)
    eye = eye_from_rod(clip)
    across, half, shade = round_rod(rng, eye)

    def rod(b, wheel_end, band_from):
        tube, flat = b.tube, b.flat

        def as_bar(name, frame, kind, x0, x1, r, *rest, paint=None, **more):
            if name != "rod":
                return tube(name, frame, kind, x0, x1, r, *rest, paint=paint, **more)
            corner = np.array([x0, 0, 0]) - half * across
            flat("rod", "rod", kind, corner, (1, 0, 0), across, (x1 - x0, 2 * half), paint=lambda v: shade(paint(v)), cut_at_face=True)

        b.tube = as_bar
        beside(b, rng, clip.spec["pin_x"])
        rod_of_facets(b, wheel_end, band_from)
        if rng.random() < 0.15:
            long, wide = rng.uniform(12, 26), rng.uniform(1.3, 2.2)
            tube("boot", "still", tx.glove, 0, long, wide * ROD_R_MM)
        b.tube = tube

    return rod


def beside(b, rng, pin_x):
    """What lies behind the rod or along it."""
    if rng.random() < 0.35:
        y, z = rng.uniform(-26, 26), rng.uniform(25, 60)
        b.flat("hose", "still", tx.glove, (-5, y, z), (1, rng.uniform(-0.12, 0.12), 0), (0, 1, 0), (pin_x, rng.uniform(6, 22)), rng.uniform(0.4, 2.2))
    if rng.random() < 0.35:
        b.flat("plate", "still", tx.rusty_plate, (rng.uniform(5, 60), -60, 60), (1, 0, 0), (0, 1, 0), (rng.uniform(20, 80), 120), rng.uniform(0.4, 3.2))


def chamber_with_hole(number):
    rng = draws(number + 700_000)
    wide, dark = rng.uniform(10, 22), rng.uniform(0.1, 0.5)

    def chamber(b, body, d):
        chamber_bare(b, body, d)
        b.disc("hole", "still", body, (0.02, 0, 0), wide, (0, 0, 1), (0, 1, 0), dark)

    return chamber


class RodClip(Clip):
    """The rod is drawn for where the camera stands."""

    def __init__(self, number):
        self.number = number
        super().__init__(f"rod-{number}", spec_of(number))

    def tape_place(self):
        tracking_scene.rod, tracking_scene.chamber = rod_round(self), chamber_with_hole(self.number)
        return super().tape_place()


def write(folder, number):
    clip = RodClip(number)
    marks = {k: px.tolist() for k, (_, px) in clip.marks_at(0.0).items()}
    r, t, _ = clip.camera.pose(0.0)
    state = clip.wheel_end.state(clip.stroke(0.0))
    along = (state["pin"] - state["inner"]) / np.linalg.norm(state["pin"] - state["inner"])
    far = np.linalg.norm(state["pin"]) - 74
    line = [clip.renderer.project(state["pin"] - along * (74 + far * share), r, t).tolist() for share in (0.8, 0.5, 0.2)]
    named = [{"inches": i, "strokePx": [stroke_of(clip, i)[4].tolist()]} for i in NAMED_INCHES]
    if not all(inside(clip, px) for px in [*marks.values(), *(each["strokePx"][0] for each in named)]) or clip.pin_visible(0.0) < 0.95:
        return False
    keep(folder, number, clip, {**marks, "rodLine": line, "tapeGraduations": named})
    return True


if __name__ == "__main__":
    make(write)
