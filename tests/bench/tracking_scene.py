"""Parts of a wheel end as flat patches at their true depths (chamber frame, mm, z away from the camera), far to near.

A patch: texture (value times cover, cover) and the place of its first pixel's corner with the two directions of one pixel, in the
frame of what it belongs to: 'still', 'rod' (origin at the pin, x outwards along the rod), 'arm' (origin at the camshaft, x to the pin).
Round parts are facets; thickness is shown by a few layers behind one another.
"""
import cv2
import numpy as np
import tracking_textures as tx
from tracking_mechanism import ROD_R_MM, SHAFT_END_Z, PIN_END_Z

PAD = 2


class Patch:
    def __init__(self, name, frame, tex, origin, a, b, cut_at_face=False, whole=True):
        self.name, self.frame, self.tex, self.cut_at_face = name, frame, tex, cut_at_face
        self.a, self.b = np.array(a, float), np.array(b, float)
        self.origin = np.array(origin, float) - (PAD * (self.a + self.b) if whole else 0)


def patch(name, frame, values, corner, along, across, size_mm, cover=None, cut_at_face=False):
    """`values` spans size_mm (along, across) from `corner`."""
    h, w = values.shape
    cover = np.ones((h, w), np.float32) if cover is None else cover.astype(np.float32)
    tex = np.dstack([values.astype(np.float32) * cover, cover])
    tex = cv2.copyMakeBorder(tex, PAD, PAD, PAD, PAD, cv2.BORDER_CONSTANT)
    unit = lambda v: np.array(v, float) / np.linalg.norm(v)
    return Patch(name, frame, tex, corner, unit(along) * size_mm[0] / w, unit(across) * size_mm[1] / h, cut_at_face)


def disc_cover(n, r=1.0, hole=0.0):
    """Cover of a disc that fills an n x n square, with soft edge of one pixel."""
    y, x = np.mgrid[0:n, 0:n] + 0.5
    d = np.hypot(x - n / 2, y - n / 2)
    cover = np.clip(r * n / 2 - d + 0.5, 0, 1)
    return cover * np.clip(d - hole * n / 2 + 0.5, 0, 1) if hole else cover


class Builder:
    def __init__(self, rng, px, look, down_y):
        self.rng, self.px, self.look, self.d = rng, px, look, down_y
        self.patches = []

    def size(self, mm):
        return max(4, int(round(mm * self.px)))

    def flat(self, name, frame, kind, corner, along, across, size_mm, shade=1.0, cover=None, cut_at_face=False, paint=None):
        values = shade * kind(self.rng, self.size(size_mm[1]), self.size(size_mm[0]), self.px)
        if paint is not None:
            values = paint(values)
        cover = cover(values.shape) if cover else None
        self.patches.append(patch(name, frame, values, corner, along, across, size_mm, cover, cut_at_face))

    def disc(self, name, frame, kind, centre, r, u, v, shade=1.0, hole=0.0, paint=None):
        corner = np.array(centre, float) - r * np.array(u, float) - r * np.array(v, float)
        n = self.size(2 * r)
        self.flat(name, frame, kind, corner, u, v, (2 * r, 2 * r), shade, lambda _s: disc_cover(n, 1.0, hole), paint=paint)

    def tube(self, name, frame, kind, x0, x1, r, y=0.0, z=0.0, facets=7, paint=None, cut_at_face=False):
        """Facets of a cylinder along x, the half that looks towards the camera (-z)."""
        step = np.pi / facets
        side = 2 * r * np.tan(step / 2)
        for i in range(facets):
            at = -np.pi / 2 + (i + 0.5) * step
            n = np.array([0, np.sin(at), -np.cos(at)])
            v = np.array([0, np.cos(at), np.sin(at)])
            centre = np.array([x0, y, z]) + r * n
            light = 0.5 + 0.62 * max(0.0, float(n @ np.array([0.0, -0.55 * self.d, -0.83])))
            tone = paint and (lambda values, p=paint: p(values))
            self.flat(f"{name}-{i}", frame, kind, centre - v * side / 2, (1, 0, 0), v, (x1 - x0, side), light, None, cut_at_face, tone)


def build(rng, px_per_mm, far_px_per_mm, wheel_end, look, down_y, band_from, tape):
    """All patches, in the order they are painted."""
    b = Builder(rng, px_per_mm, look, down_y)
    d = down_y
    cx, cy = wheel_end.camshaft[:2]
    body = tx.clean_paint if look == "clean" else tx.housing
    ground = tx.gravel(rng, int(4200 * far_px_per_mm), int(8400 * far_px_per_mm), far_px_per_mm)
    slope = np.array([0, -0.5 * d, 0.866])
    b.patches.append(patch("ground", "still", ground * 0.8, (-4100, 700 * d, 500), (1, 0, 0), slope, (8400, 4200)))
    rail(b, d, cy)
    axle(b, d, cx, cy)
    chamber(b, body, d)
    arm(b, wheel_end)
    rod(b, wheel_end, band_from)
    held_tape(b, rng, tape)
    return b.patches


def rail(b, d, cy):
    y = -150 if d > 0 else cy + 110
    rivets = lambda values: dots(b, values, 55, 9, 1.5)
    b.flat("rail", "still", tx.rusty_plate, (-900, y - 170 * (d > 0), 172), (1, 0, 0), (0, 1, 0), (1900, 170), 0.85, paint=rivets)
    b.flat("rail-flange", "still", tx.rusty_plate, (-900, y if d > 0 else y - 12, 92), (1, 0, 0), (0, 1, 0), (1900, 12), 1.1)


def dots(b, values, every_mm, r_mm, bright):
    """Rivet heads in two rows."""
    h, w = values.shape
    for row in (0.25, 0.75):
        for x in np.arange(20, w / b.px, every_mm):
            at = (int(x * b.px), int(row * h))
            cv2.circle(values, (at[0] + int(0.15 * r_mm * b.px), at[1] + int(0.2 * r_mm * b.px)), int(r_mm * b.px / 2), 18, -1, cv2.LINE_AA)
            cv2.circle(values, at, int(r_mm * b.px / 2), float(60 * bright), -1, cv2.LINE_AA)
    return values


def axle(b, d, cx, cy):
    ax, ay = cx + 95, cy + (110 if d > 0 else 75)
    b.flat("axle-plate", "still", tx.rusty_plate, (ax - 150, ay - 110, 78), (1, 0, 0), (0, 1, 0), (330, 220), 0.9, paint=lambda v: dots(b, v, 70, 16, 1.3))
    b.tube("axle", "still", tx.rusty_plate, -700, 1100, 62, ay + 40, 150, 5)
    b.disc("hub", "still", tx.cast_iron, (ax, ay, 40), 48, (1, 0, 0), (0, 1, 0), 1.2)


def chamber(b, body, d):
    b.tube("pressure-side", "still", body, -112, -71, 95, facets=30)
    b.disc("band-rim", "still", tx.steel_band, (-54, 0, 0), 102.8, (0, 0, 1), (0, 1, 0), 0.5)
    b.tube("clamp-band", "still", tx.steel_band, -71, -54, 102.8, facets=40)
    b.tube("body", "still", body, -54, 0, 84, facets=40)
    b.disc("face", "still", body, (0, 0, 0), 78, (0, 0, 1), (0, 1, 0), 0.8)
    for y0 in (-86, 40):
        b.flat("bracket-side", "still", tx.rusty_plate, (9.5, y0, -27), (0, 0, 1), (0, 1, 0), (89, 46), 0.7)
        b.flat("bracket-edge", "still", tx.rusty_plate, (0.05, y0, -27), (1, 0, 0), (0, 1, 0), (9.45, 46), 1.15)
    for y in (60.3, -60.3):
        b.tube("stud", "still", tx.machined, 9.5, 36, 7.9, y, 0, 5)
        b.tube("nut", "still", tx.cast_iron, 12.3, 26.3, 13, y, 0, 3)


def arm(b, wheel_end):
    long = 139.7
    for z, shade in ((7.4, 0.35), (0, 0.45), (-7.4, 1.05)):
        b.flat("arm-stem", "arm", tx.cast_iron, (0, -20, z), (1, 0, 0), (0, 1, 0), (long + 16, 40), shade, lambda s: wedge(s, 1.0, 0.78))
    for z, shade in ((10, 0.4), (-6, 0.5), (-17.2, 1.0)):
        b.flat("arm-body", "arm", tx.cast_iron, (-50, -35, z), (1, 0, 0), (0, 1, 0), (108, 70), shade, lambda s: wedge(s, 1.0, 0.66))
    b.disc("arm-boss", "arm", tx.cast_iron, (0, 0, -21.5), 33, (1, 0, 0), (0, 1, 0), 1.15)
    b.disc("arm-washer", "arm", tx.steel_band, (0, 0, -23.6), 26.5, (1, 0, 0), (0, 1, 0), 0.8)
    b.disc("arm-ring", "arm", tx.machined, (0, 0, -26), 22.4, (1, 0, 0), (0, 1, 0), 0.7)
    b.disc("arm-nipple", "arm", tx.machined, (40, 12, -29), 4.5, (1, 0, 0), (0, 1, 0), 1.0)
    for z, shade in ((-27, 0.4), (-29, 0.5)):
        b.disc("shaft-side", "arm", tx.machined, (0, 0, z), 17.9, (1, 0, 0), (0, 1, 0), shade)
    b.disc("shaft-end", "arm", tx.machined, (0, 0, SHAFT_END_Z), 17.4, (1, 0, 0), (0, 1, 0), 0.95, paint=lambda v: centre_mark(b, v, 2.9))


def wedge(shape, left, right):
    """Cover of a strip that narrows from left to right, its corners rounded."""
    h, w = shape
    cover = np.zeros((h, w), np.float32)
    r = int(h * 0.2)
    points = np.array([[r, h / 2 - left * h / 2], [w - r, h / 2 - right * h / 2], [w, h / 2 - right * h / 2 + r], [w, h / 2 + right * h / 2 - r],
                       [w - r, h / 2 + right * h / 2], [r, h / 2 + left * h / 2], [0, h / 2 + left * h / 2 - r], [0, h / 2 - left * h / 2 + r]])
    cv2.fillPoly(cover, [np.int32(points * 16)], 1.0, cv2.LINE_AA, 4)
    return cover


def centre_mark(b, values, r_mm):
    """A drilled centre: dark with a lit rim on one side."""
    h, w = values.shape
    y, x = np.mgrid[0:h, 0:w] + 0.5
    d = np.hypot(x - w / 2, y - h / 2) / b.px
    hole = np.clip((r_mm - d) * b.px + 0.5, 0, 1)
    lit = np.clip(0.5 + (x - w / 2 + (y - h / 2) * b.d) / (2 * r_mm * b.px), 0, 1)
    return values * (1 - hole) + hole * (25 + 90 * lit * np.clip(d / r_mm, 0, 1))


def rod(b, wheel_end, band_from_pin):
    long = 205.0
    def streaks(values):
        h, w = values.shape
        x = np.arange(w) / w * (long - 74) - long
        thread = np.clip((x + 104) * 2, 0, 1) * 14 * np.sin(x * np.pi)
        values = values + thread[None, :]
        band = np.clip((x + band_from_pin + 25) * b.px, 0, 1) * np.clip((-band_from_pin - x) * b.px, 0, 1)
        chipped = (tx.octaves(b.rng, h, w, 5 * b.px, 0.75) < 0.9).astype(np.float32)
        return values * (1 - band * chipped) + band * chipped * 92
    b.tube("rod", "rod", tx.rod_steel, -long, -74, ROD_R_MM, facets=5, paint=streaks, cut_at_face=True)
    b.tube("rod-nut", "rod", tx.cast_iron, -74, -64.5, 13.2, facets=3)
    b.tube("barrel", "rod", tx.cast_iron, -63.5, -38, 13.2, facets=5)
    for z, shade in ((15, 0.35), (-9, 0.45), (-14, 0.5), (-19, 1.1)):
        b.flat("clevis", "rod", tx.cast_iron, (-46, -16.5, z), (1, 0, 0), (0, 1, 0), (62, 33), shade, lambda s: ear(s))
    b.disc("pin-washer", "rod", tx.steel_band, (0, 0, -21), 12.5, (1, 0, 0), (0, 1, 0), 0.85)
    for z, shade in ((-22, 0.35), (-23.5, 0.45)):
        b.disc("pin-side", "rod", tx.machined, (0, 0, z), 6.35, (1, 0, 0), (0, 1, 0), shade)
    b.disc("pin-end", "rod", tx.machined, (0, 0, PIN_END_Z), 6.2, (1, 0, 0), (0, 1, 0), 1.0, paint=lambda v: centre_mark(b, v, 1.55))
    turn = np.radians(38)
    u, v = np.array([np.cos(turn), np.sin(turn), 0]), np.array([-np.sin(turn), np.cos(turn), 0])
    b.flat("cotter", "rod", tx.machined, u * 6.4 - v * 1.3 + np.array([0, 0, -23]), u, v, (9.5, 2.6), 0.9)
    b.flat("cotter", "rod", tx.machined, -u * 13 - v * 2.2 + np.array([0, 0, -23]), u, v, (6.5, 4.4), 0.8)


def ear(shape):
    """A plate with a round right end and a narrower left one."""
    h, w = shape
    cover = np.zeros((h, w), np.float32)
    r = h / 2
    points = np.array([[0, 0.12 * h], [0.35 * w, 0], [w - r, 0], [w - r, h], [0.35 * w, h], [0, 0.88 * h]])
    cv2.fillPoly(cover, [np.int32(points * 16)], 1.0, cv2.LINE_AA, 4)
    cv2.circle(cover, (int((w - r) * 16), int(r * 16)), int(r * 16), 1.0, -1, cv2.LINE_AA, 4)
    return cover


def held_tape(b, rng, tape):
    along, across = tape["along"], tape["across"]
    size = (12 * 25.4 + 12, 19.05)
    h, w = b.size(size[1]), b.size(size[0])
    face = tx.tape_face(rng, h, w, w / size[0], 0.0)
    b.patches.append(patch("tape", "still", face, tape["zero"], along, across, size))
    case = np.array(tape["zero"]) + along * (12 * 25.4) - across * 12 + np.array([0, 0, -8])
    b.flat("tape-case", "still", tx.clean_paint, case, along, across, (68, 66), 1.0, lambda s: wedge(s, 1, 1))
    b.flat("tape-glove", "still", tx.glove, case + along * 25 + across * 20 + np.array([0, 0, -25]), along, across, (200, 80), 1.0, lambda s: wedge(s, 0.8, 1))


def hand(rng, px):
    """A gloved hand that passes before all else: 110 x 150 mm, its own frame 'hand'."""
    h, w = int(150 * px), int(110 * px)
    y, x = (np.mgrid[0:h, 0:w] / px).astype(np.float32)
    cover = np.zeros((h, w), np.float32)
    for fx, top in ((18, 34), (41, 14), (64, 10), (88, 26)):
        cover = np.maximum(cover, (np.abs(x - fx) < 11.5) & (y > top))
    cover = np.maximum(cover, y > 80).astype(np.float32)
    cover = cv2.GaussianBlur(cover, (0, 0), max(0.7, 2.2 * px))
    cover = np.clip((cover - 0.5) * 3 * px + 0.5, 0, 1)
    return patch("hand", "hand", tx.glove(rng, h, w, px) * 1.2, (-55, -45, 0), (1, 0, 0), (0, 1, 0), (110, 150), cover)
