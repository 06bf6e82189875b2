"""Stills of the second renderer for what is seen before anything is marked: /usr/bin/python3 tests/bench/assists_rough_flat.py FOLDER FIRST COUNT

As assists_outlines_flat.py, but with arms of several lengths, pins and camshafts of several sizes, ends of several metals, bolts that are no ends,
and now and then something before the pin or the camshaft; every tenth has a chamber without rod and arm. Each becomes FOLDER/flat-NUMBER.pgm with flat-NUMBER.json. Debian package: python3-opencv.
"""
import numpy as np
import tracking_mechanism
import tracking_scene
from assists_marks_flat import changes, graduations, inside, keep, make
from assists_outlines_flat import RIM_R, RIM_X, chamber_round
from tracking_clips import Clip

tx = tracking_scene.tx
METALS = [tx.machined, tx.steel_band, tx.cast_iron, tx.clean_paint, tx.rusty_plate]
IS_END = ("pin-", "shaft-", "arm-ring", "arm-washer", "arm-boss")
arm_of_one, rod_of_one, mechanism_of_one = tracking_scene.arm, tracking_scene.rod, tracking_mechanism.ARM_MM


def linkage(number):
    """Sizes in mm. Arms of 5 to 7 in, pins of 1/2 and 5/8 in, camshafts of 1 1/4 to 1 5/8 in: common practice, no source."""
    rng = np.random.default_rng(123_000 + number)
    arm_mm = float(rng.choice([127.0, 139.7, 152.4, 177.8]))
    pin_x = float(rng.uniform(95, 160))
    released = float(np.radians(rng.uniform(96, 118)))
    # The pin, released, a little off the chamber's axis; the arm stands back from square to it.
    camshaft = (pin_x - arm_mm * np.cos(released), float(rng.uniform(-8, 8)) + arm_mm * np.sin(released))
    return rng, {"arm_mm": arm_mm, "pin_x": pin_x, "camshaft": camshaft, "stroke": float(rng.uniform(25, 60)),
                 "pin_by": float(rng.choice([1.0, 1.25])), "shaft_by": float(rng.uniform(0.9, 1.19))}


def other_ends(b, rng, sizes):
    """Discs of ends in other sizes, metals and shades; a stem of another length."""
    flat, disc = b.flat, b.disc
    by = {"pin-": sizes["pin_by"], "shaft-": sizes["shaft_by"], "arm-ring": sizes["shaft_by"], "arm-washer": sizes["shaft_by"]}
    metal = {name: METALS[int(rng.integers(len(METALS)))] if rng.random() < 0.5 else None for name in IS_END}
    shade = {name: float(rng.uniform(0.6, 1.35)) for name in IS_END}

    def other_disc(name, frame, kind, centre, r, u, v, dark=1.0, **more):
        of = next((start for start in IS_END if name.startswith(start)), None)
        if of:
            kind, r, dark = metal[of] or kind, r * by.get(of, 1.0), dark * shade[of]
        disc(name, frame, kind, centre, r, u, v, dark, **more)

    def other_flat(name, frame, kind, corner, along, across, size_mm, *rest, **more):
        if name == "arm-stem":
            size_mm = (size_mm[0] - mechanism_of_one + sizes["arm_mm"], size_mm[1])
        flat(name, frame, kind, corner, along, across, size_mm, *rest, **more)

    b.disc, b.flat = other_disc, other_flat


def bolts(b, rng):
    """No ends: heads on washers about rod and arm."""
    for _ in range(int(rng.integers(0, 6))):
        at = (rng.uniform(30, 260), rng.uniform(-200, 200), rng.uniform(40, 76))
        r, turn = rng.uniform(5, 20), rng.uniform(0, 3)
        u, v = (np.cos(turn), np.sin(turn), 0), (-np.sin(turn), np.cos(turn), 0)
        b.disc("bolt-washer", "still", tx.steel_band, at, 1.6 * r, u, v, rng.uniform(0.5, 1.2))
        b.disc("bolt", "still", tx.cast_iron, (at[0], at[1], at[2] - 6), r, u, v, rng.uniform(0.6, 1.6))


def covers(b, rng, sizes):
    """A hose or a rag before an end, in one picture of eight."""
    if rng.random() < 1 / 8:
        at = (sizes["pin_x"], 0.0) if rng.random() < 0.5 else sizes["camshaft"]
        turn = rng.uniform(0, np.pi)
        along, across = np.array([np.cos(turn), np.sin(turn), 0]), np.array([-np.sin(turn), np.cos(turn), 0])
        wide = rng.uniform(18, 60)
        corner = np.array([*at, -60.0]) - 90 * along - wide / 2 * across
        b.flat("cover", "still", tx.glove, corner, along, across, (180, wide), rng.uniform(0.5, 1.5))


def has_linkage(number):
    return number % 10 != 9


def scene_of(number):
    rng, sizes = linkage(number)
    tracking_mechanism.ARM_MM = sizes["arm_mm"]
    tracking_scene.chamber = chamber_round(rng)

    def arm(b, wheel_end):
        bolts(b, rng)
        if not has_linkage(number):
            return
        other_ends(b, rng, sizes)
        arm_of_one(b, wheel_end)

    def rod(b, wheel_end, band_from):
        if has_linkage(number):
            rod_of_one(b, wheel_end, band_from)
        covers(b, rng, sizes)

    tracking_scene.arm, tracking_scene.rod = arm, rod
    aim = (float(rng.uniform(70, 120)), float(rng.uniform(20, 60)), 0.0)
    return sizes, {**changes(number), "camshaft": sizes["camshaft"], "pin_x": sizes["pin_x"], "stroke": sizes["stroke"], "aim": aim}


def write(folder, number):
    sizes, spec = scene_of(number)
    clip = Clip(f"rough-{number}", spec, furnished=False)
    marks = {k: px.tolist() for k, (_, px) in clip.marks_at(0.0).items()}
    r, t, eye = clip.camera.pose(0.0)
    see = lambda mm: clip.renderer.project(mm, r, t).tolist()
    rim = [see((RIM_X, RIM_R * np.cos(a), RIM_R * np.sin(a))) for a in np.arange(120) * np.pi / 60]
    if not all(inside(clip, px) for px in [*marks.values(), *rim]) or eye[0] < 5 or clip.pin_visible(0.0) < 0.95:
        return False
    depth = {k: float((r @ mm + t)[2]) for k, (mm, _) in clip.marks_at(0.0).items()}
    radii = {"clevisPin": 6.35 * sizes["pin_by"], "camshaftEnd": 17.4 * sizes["shaft_by"]}
    ends = {k: {"radiusPx": mm * clip.camera.f / depth[k]} for k, mm in radii.items()}
    keep(folder, number, clip, {**marks, "rim": rim, "ends": ends if has_linkage(number) else None, "tapeGraduations": graduations(clip)})
    return True


if __name__ == "__main__":
    make(write)
