"""Pairs of stills of the second renderer for the edge at which the rod leaves the chamber:
/usr/bin/python3 tests/bench/assists_face_flat.py FOLDER FIRST COUNT

As assists_rod_flat.py, of numbers of their own; 2 n shows a brake released, 2 n + 1 applied, from another place and with the tape held anew. The
rod ends where a round bar meets the plane that it comes out of: of the face, of a seal plate or of a boss; or it comes out of a clear hole and is
seen, darker, as far as that one's near rim. On the rod there is at times a ring of rust or wear and a band of paint, which go with it; in each
picture by itself a shadow over it or a hose across. Encoded as cameras do. Debian package: python3-opencv.
"""
import gc
import numpy as np
import tracking_clips
import tracking_scene
import tracking_textures as tx
from assists_marks_flat import inside, keep, make, stroke_of
from assists_rod_flat import NAMED_INCHES, RodClip, rod_round, spec_of
from tracking_clips import Clip
from tracking_mechanism import ROD_R_MM, face_point
from tracking_scene import chamber as chamber_bare

LEAST_EYE_SHARE = 0.05
FAR_PX_PER_MM = 0.4
ENCODED = 12.92, 1.055, 2.4
NO_BAND = -600.0


def drawn(pair):
    """Chamber: radius, thickness, shade. On the rod, released: from the face outwards, width, by or tone. Lengths in mm."""
    rng = np.random.default_rng(64_000_000 + pair)
    u = rng.uniform
    some = lambda share, value: value if rng.random() < share else None
    way = str(rng.choice(["plain", "seal", "boss", "clear"], p=[0.4, 0.25, 0.2, 0.15]))
    plate = {"seal": (u(11, 19), u(0.1, 2.0), u(0.25, 1.5)), "boss": (u(11, 22), u(2.0, 9.0), u(0.5, 1.3))}
    clear, close = (u(9.2, 14), u(0.08, 0.45)), some(0.25, (u(8.3, 9.0), u(0.1, 0.5)))
    return {
        "way": way, "plate": plate.get(way), "hole": clear if way == "clear" else close if way == "plain" else None, "behind": u(0.1, 0.6),
        "ring": some(0.35, (u(-6, 10), u(0.5, 8), u(0.35, 1.7))), "paint": some(0.4, (u(-40, -2), u(15, 30), u(40, 170))),
        "shadow": [some(0.3, (u(0.3, 9), u(0.2, 0.7), u(-0.25, 0.25))) for _ in range(2)],
        "hose": [some(0.12, (u(-4, 14), u(4, 10), u(0.4, 2.0), u(-0.5, 0.5))) for _ in range(2)],
    }


def specs(pair):
    rng = np.random.default_rng(91_000_000 + pair)
    u, n = lambda a, b: float(rng.uniform(a, b)), lambda s: float(rng.normal(0, s))
    first = {**spec_of(pair), "stroke": 0.0, "yaw": u(-2, 35), "camshaft": (174.6 + n(8), 135.4 + n(5)), "band": NO_BAND}
    aim = first["aim"]
    return first, {
        **first, "stroke": u(25, 60), "yaw": first["yaw"] + n(3.4), "lift": first["lift"] + n(3.4), "roll": first["roll"] + n(3),
        "distance": first["distance"] * (1 + n(0.06)), "aim": (aim[0] + n(12), aim[1] + n(12), 0.0),
        "contrast": first["contrast"] * float(np.exp(n(0.15))), "tape_before": u(14, 34), "tape_turn": u(-3, 3),
    }


class FaceClip(RodClip):
    def __init__(self, number):
        self.number, self.which = divmod(number, 2)
        self.about, both = drawn(self.number), specs(self.number)
        self.px_per_mm = 1.15 * both[0]["f_over_w"] * 1920 / (both[0]["distance"] - 30)
        Clip.__init__(self, f"face-{self.number}", both[self.which], furnished=False)
        self.renderer.beyond_face = self.beyond_arc
        self.eye = self.camera.pose(0.0)[2]
        self.state, self.released = (self.wheel_end.state(mm) for mm in (self.stroke(0.0), 0.0))
        self.end_x = self.about["plate"][1] if self.about["plate"] else 0.0

    def furnish(self, like=None):
        tracking_scene.rod, tracking_scene.chamber = self.rod, self.chamber
        # Of the ground, far behind, coarse pieces do.
        build, tracking_clips.build = tracking_clips.build, lambda rng, _px, _far, *more: build(rng, self.px_per_mm, FAR_PX_PER_MM, *more)
        super().furnish(like)
        tracking_clips.build = build

    def rod(self, b, wheel_end, band_from):
        flat = b.flat

        def near_face(name, *where, **more):
            if name != "rod":
                return flat(name, *where, **more)
            paint = more.pop("paint")
            from_x, long = where[2][0], where[5][0]
            to_end, to_face = from_x - rod_at(self.state, self.eye, self.end_x), from_x - rod_at(self.released, self.eye, 0)
            return flat(name, *where, paint=lambda values: self.beside_face(paint(values), to_end, to_face, long), **more)

        b.flat = near_face
        rod_round(self)(b, wheel_end, band_from)
        b.flat = flat
        if self.about["hose"][self.which]:
            x, wide, shade, slope = self.about["hose"][self.which]
            b.flat("hose", "still", tx.glove, (x - 60 * slope, -60, -20), (slope, 1, 0), (1, -slope, 0), (120, wide), shade)

    def beside_face(self, values, to_end, to_face, long):
        """to_end, to_face: of the first column, mm outwards from the rod's end, and from where the face was on the rod while released."""
        h, w = values.shape
        along = (np.arange(w) + 0.5) / w * long
        from_end, on_rod = to_end + along, to_face + along
        t = (np.arange(h)[:, None] + 0.5) / h * 2 - 1
        if self.about["paint"]:
            at, wide, tone = self.about["paint"]
            lit = values / np.maximum(1, values.mean(axis=1, keepdims=True)) * (0.4 + 0.6 * np.sqrt(1 - t * t))
            values = np.where((on_rod > at) & (on_rod < at + wide), tone * lit, values)
        if self.about["ring"]:
            at, wide, by = self.about["ring"]
            values = np.where((on_rod > at) & (on_rod < at + wide), values * by, values)
        if self.about["shadow"][self.which]:
            at, by, slope = self.about["shadow"][self.which]
            values = values * (1 - by * np.clip((at - from_end + slope * ROD_R_MM * t) * 2 + 0.5, 0, 1))
        return np.where(from_end < 0, values * self.about["behind"], values) if self.about["way"] == "clear" else values

    def chamber(self, b, body, d):
        chamber_bare(b, body, d)
        way, y = self.about["way"], self.middle_y()
        if self.about["hole"]:
            wide, dark = self.about["hole"]
            b.disc("hole", "still", body, (0.02, y, 0), wide, (0, 0, 1), (0, 1, 0), dark)
        if self.about["plate"]:
            wide, thick, shade = self.about["plate"]
            b.tube(way, "still", body, 0, thick, wide, y, 0, 24)
            b.disc(way, "still", body, (thick, y, 0), wide, (0, 0, 1), (0, 1, 0), shade)

    def middle_y(self):
        """A seal goes with the rod; boss and clear hole stay about the axis."""
        return rod_y(self.state) if self.about["way"] in ("plain", "seal") else 0.0

    def circle(self, x, radius):
        turns = np.linspace(-1.5, 1.5, 241)
        return [np.array([x, self.middle_y() + radius * np.sin(q), -radius * np.cos(q)]) for q in turns]

    def rod_end(self):
        along = way_of(self.state)
        near = self.eye - self.state["pin"] - along * (along @ (self.eye - self.state["pin"]))
        near /= np.linalg.norm(near)
        side = np.cross(along, near)
        ring = [self.state["pin"] + ROD_R_MM * (near * np.cos(q) + side * np.sin(q)) for q in np.linspace(-1.55, 1.55, 121)]
        return [p + along * (self.end_x - p[0]) / along[0] for p in ring]

    def end_curve(self):
        return self.circle(0, self.about["hole"][0]) if self.about["way"] == "clear" else self.rod_end()

    def edges(self):
        """Where the rod's middle line meets what is of the chamber, by name: the rod's end first; seen or not."""
        curves = {"end": self.end_curve()}
        if self.about["hole"]:
            curves["hole"] = self.circle(0, self.about["hole"][0])
        if self.about["plate"]:
            wide, thick, _ = self.about["plate"]
            curves.update(rim=self.circle(thick, wide), base=self.circle(0, wide))
        r, t, _ = self.camera.pose(0.0)
        near, beside, out = self.frame_at_face(r, t)
        found = {}
        for name, curve in curves.items():
            px = np.array([self.renderer.project(p, r, t) - near for p in curve])
            order = np.argsort(px @ beside)
            found[name] = (near + out * np.interp(0, (px @ beside)[order], (px @ out)[order])).tolist()
        return found

    def frame_at_face(self, r, t):
        near = self.renderer.project(face_point(self.state, self.eye), r, t)
        out = self.renderer.project(face_point(self.state, self.eye) + 40 * way_of(self.state), r, t) - near
        out /= np.linalg.norm(out)
        return near, np.array([-out[1], out[0]]), out

    def beyond_arc(self, r, t, box):
        u0, v0, u1, v1 = box
        near, beside, out = self.frame_at_face(r, t)
        curve = np.array([self.renderer.project(p, r, t) - near for p in self.end_curve()])
        order = np.argsort(curve @ beside)
        u, v = np.arange(u0, u1)[None, :] + 0.5 - near[0], np.arange(v0, v1)[:, None] + 0.5 - near[1]
        ends = np.interp(u * beside[0] + v * beside[1], (curve @ beside)[order], (curve @ out)[order])
        return np.clip(u * out[0] + v * out[1] - ends + 0.5, 0, 1).astype(np.float32)

    def picture(self, t, _index):
        light = super().picture(t, self.which) / 255.0
        low, scale, power = ENCODED
        return np.round(255 * np.where(light < 0.0031308, low * light, scale * light ** (1 / power) - scale + 1)).astype(np.uint8)


def way_of(state):
    along = state["pin"] - state["inner"]
    return along / np.linalg.norm(along)


def rod_at(state, eye, x):
    """In the rod's frame: where its patch, which lies in its axis, shows the near surface line's place at the plane x."""
    along = way_of(state)
    near = eye - state["pin"] - along * (along @ (eye - state["pin"]))
    place = face_point(state, eye)
    place = place + along * x / along[0]
    part = ROD_R_MM / (near @ (eye - place) / np.linalg.norm(near))
    return along @ (place + part * (place - eye) - state["pin"])


def rod_y(state):
    along = way_of(state)
    return state["pin"][1] - along[1] / along[0] * state["pin"][0]


def write(folder, number):
    # A clip and its renderer hold each other, and hundreds of megabytes.
    gc.collect()
    clip = FaceClip(number)
    marks = {k: px.tolist() for k, (_, px) in clip.marks_at(0.0).items()}
    named = [{"inches": i, "strokePx": [stroke_of(clip, i)[4].tolist()]} for i in NAMED_INCHES]
    places = [*marks.values(), *(each["strokePx"][0] for each in named)]
    if clip.eye[0] < LEAST_EYE_SHARE * np.linalg.norm(clip.eye) or clip.pin_visible(0.0) < 0.9 or not all(inside(clip, px) for px in places):
        return False
    keep(folder, number, clip, {**marks, "tapeGraduations": named, "edges": clip.edges(), "way": clip.about["way"]})
    return True


if __name__ == "__main__":
    make(write)
