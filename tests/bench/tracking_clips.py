"""Makes the clips with known truth:  /usr/bin/python3 tests/bench/tracking_clips.py FOLDER [NAME ...]

Each clip becomes FOLDER/NAME/clip.mp4 with truth.json (fields as in sample-media/README.md where they exist there) and ids.pgm: which patch
each pixel of the seed frame shows. Debian packages: python3-opencv, ffmpeg. The patches are flat pieces at true depths, see tracking_scene.py.
"""
import copy
import json
import os
import subprocess
import sys
import time
import zlib
import cv2
import numpy as np
from tracking_clip_list import CLIPS, HELD_BACK, PLAIN
from tracking_mechanism import HandCamera, PIN_END_Z, SHAFT_END_Z, WheelEnd, eased, face_point, stroke_at
from tracking_render import Renderer
from tracking_scene import build, hand

SUB_FRAMES, ROWS_AT_ONCE, SKY = 8, 24, 150.0
INCH = 25.4


class Clip:
    def __init__(self, name, changes, furnished=True):
        """furnished=False: only where everything is, until furnish() makes the pieces, which takes nearly all of the time."""
        self.name, self.spec = name, {**PLAIN, **changes}
        s = self.spec
        self.seed = zlib.crc32(name.encode()) % 100000
        self.rng = np.random.default_rng(self.seed)
        self.w, self.h = s["size"]
        self.principal = (self.w / 2 + 0.0017 * self.w, self.h / 2 - 0.0013 * self.w)
        camera_spec = {**s, "f": s["f_over_w"] * self.w}
        self.camera = HandCamera(camera_spec, self.rng)
        self.wheel_end = WheelEnd(s["camshaft"], s["pin_x"])
        self.tape = self.tape_place()
        self.renderer = Renderer([], self.wheel_end, self.camera, s["size"], self.principal)
        if furnished:
            self.furnish()

    def furnish(self, like=None):
        """like: another of the same name, of which only the camera's place differs: its pieces and its grain, seen from here."""
        if like:
            self.untouched, self.noise, self.vignette, self.jolt = like.untouched, like.noise, like.vignette, like.jolt
            return self.show()
        s = self.spec
        px = 1.15 * self.camera.f / (s["distance"] - 30)
        band = s["pin_x"] + s["band"]
        patches = build(self.rng, px, 1.1 * self.camera.f / (s["distance"] + 1300), self.wheel_end, s["look"], s["down_y"], band, self.tape)
        self.untouched = [*patches, hand(self.rng, px)]
        self.show()
        self.noise = [self.rng.standard_normal((self.h, self.w)).astype(np.float32) for _ in range(3)]
        y, x = np.mgrid[0 : self.h, 0 : self.w].astype(np.float32)
        r2 = ((x - self.w / 2) ** 2 + (y - self.h / 2) ** 2) / (self.w**2 / 4 + self.h**2 / 4)
        self.vignette = (1 - 0.28 * r2).astype(np.float32)
        self.jolt = [(0.5 + 2.5 * self.rng.random(), 6.28 * self.rng.random()) for _ in range(12)]

    def show(self):
        self.renderer.patches = [copy.copy(p) for p in self.untouched]
        self.hand = self.renderer.patches[-1]
        self.renderer.soften(0.0, self.renderer.frames(0.0, np.array([0, 0, -70.0]))[0])

    def tape_place(self):
        a, b = np.radians(-1.7 + 2 * self.rng.standard_normal()) + np.radians(self.spec["tape_turn"]), np.radians(1.8 * self.rng.standard_normal())
        c = np.radians(5 * self.rng.standard_normal())
        along = np.array([np.cos(a) * np.cos(b), np.sin(a) * np.cos(b), -np.sin(b)])
        flat = np.array([np.sin(a), -np.cos(a), 0])
        across = flat * np.cos(c) + np.cross(along, flat) * np.sin(c)
        return {"zero": np.array([0.4, -15.8, -self.spec["tape_before"]]), "along": along, "across": across}

    def clock(self):
        """Times of the frames in the file, s; whole thousandths of a thirtieth where the rate varies."""
        s, n = self.spec, np.arange(self.spec["frames"])
        if not s["variable"]:
            return n / s["fps"]
        return np.round((n + n // 9 + 0.24 * np.sin(1.7 * n)) * 1000) / 30000

    def real(self, file_s):
        return file_s / self.spec["slow"]

    def stroke(self, t):
        return stroke_at(t, self.spec["stroke"], self.spec["applications"], self.spec["creep"])

    def hand_at(self, t):
        """In over 0.25 s, before the pin for its time, and away over 0.25 s."""
        for start, long in self.spec["hand"]:
            if start - 0.3 < t < start + long + 0.3:
                away = 1 - eased((t - start + 0.12) / 0.2) + eased((t - start - long + 0.08) / 0.2)
                pin = self.wheel_end.pin_at(self.stroke(t))
                drop = 240 * away * (1 if self.spec["down_y"] > 0 else -1)
                return pin + np.array([4 * np.sin(9 * t), drop + 5 * np.sin(6 * t), -70.0])
        return None

    def paint(self, t, rows, out, ids=None):
        frames, _ = self.renderer.frames(self.stroke(t), self.hand_at(t))
        r, tt, _ = self.camera.pose(t)
        self.renderer.paint(out, rows, r, tt, frames, ids=ids)

    def instant(self, t, out):
        readout = self.spec["readout_s"]
        if not readout:
            return self.paint(t, (0, self.h), out)
        for y0 in range(0, self.h, ROWS_AT_ONCE):
            y1 = min(self.h, y0 + ROWS_AT_ONCE)
            self.paint(t + readout * ((y0 + y1) / 2 / self.h - 0.5), (y0, y1), out[y0:y1])

    def picture(self, t, index):
        s = self.spec
        exposure = s["exposure_s"]
        shift = self.move_px(t, exposure)
        count = 1 if not exposure else int(np.clip(np.ceil(shift / 1.2), 1, SUB_FRAMES))
        total = np.zeros((self.h, self.w), np.float32)
        for k in range(count):
            out = np.full((self.h, self.w), SKY, np.float32)
            self.instant(t + exposure * ((k + 0.5) / count - 0.5), out)
            total += out / count
        if s["steadied"]:
            total = cv2.warpAffine(total, self.steady(t)[:2] @ np.array([[1, 0, 0.5], [0, 1, 0.5], [0, 0, 1]]) - np.array([[0, 0, 0.5], [0, 0, 0.5]]),
                                   (self.w, self.h), flags=cv2.INTER_CUBIC, borderMode=cv2.BORDER_REFLECT)
        total = cv2.GaussianBlur(total, (0, 0), 0.62 if self.w < 3000 else 0.9)
        total *= self.vignette * (s["contrast"] * self.gain(t))
        self.shade(total, t)
        rng = np.random.default_rng([self.seed, index])
        grain = np.roll(self.noise[index % 3], (int(rng.integers(self.h)), int(rng.integers(self.w))), (0, 1))
        total += grain * s["noise"] * np.sqrt(0.35 + total * (1.3 / 255))
        return np.clip(total + 6.5, 0, 255).astype(np.uint8)

    def gain(self, t):
        jump = self.spec["jump"]
        return 1.15 if not jump else 1.15 * (1 + (0.75 if t > jump[0] else 0) - 0.3 * eased((t - jump[0]) / 0.5) + (0.2 if t > jump[1] else 0))

    def shade(self, picture, t):
        """A soft shadow that walks through."""
        if not self.spec["shadow"]:
            return
        start, end = self.spec["shadow"]
        x = np.arange(self.w) / self.w
        centre = -0.4 + 1.8 * (t - start) / (end - start)
        picture *= (1 - 0.45 * np.exp(-(((x - centre) / 0.17) ** 2))).astype(np.float32)[None, :]

    def steady(self, t):
        """What the phone's own steadying leaves: small shifts, turns and a shear, as seen pixel from true pixel."""
        w = [np.sin(2 * np.pi * hz * t + p) + 0.6 * np.sin(2 * np.pi * 2.3 * hz * t + 2 * p) for hz, p in self.jolt]
        m = np.array([[1.06 + 8e-4 * w[0], 1.1e-3 * w[1], 2.6 * w[2]], [1.2e-3 * w[3], 1.06 + 6e-4 * w[4], 2.4 * w[5]], [0, 0, 1]])
        c = np.array([[1, 0, self.w / 2], [0, 1, self.h / 2], [0, 0, 1]])
        return c @ m @ np.linalg.inv(c)

    def move_px(self, t, exposure):
        if not exposure:
            return 0.0
        a, b = self.marks_at(t - exposure / 2, False), self.marks_at(t + exposure / 2, False)
        return max(float(np.linalg.norm(a[k][1] - b[k][1])) for k in a)

    def marks_at(self, t, warped=True):
        s = self.wheel_end.state(self.stroke(t))
        _, _, eye = self.camera.pose(t)
        points = {
            "chamberFace": face_point(s, eye),
            "clevisPin": np.array([s["pin"][0], s["pin"][1], PIN_END_Z]),
            "camshaftEnd": np.array([*self.wheel_end.camshaft[:2], SHAFT_END_Z]),
        }
        return {k: (mm, self.seen(t, k, mm, warped)) for k, mm in points.items()}

    def seen(self, t, kind, mm, warped=True):
        """Pixel place, at the instant at which its row is read."""
        when = t
        for _ in range(5 if self.spec["readout_s"] else 1):
            r, tt, _ = self.camera.pose(when)
            place = mm
            if kind == "clevisPin" and when != t:
                place = np.array([*self.wheel_end.pin_at(self.stroke(when))[:2], PIN_END_Z])
            px = self.renderer.project(place, r, tt)
            when = t + self.spec["readout_s"] * (px[1] / self.h - 0.5)
        if warped and self.spec["steadied"]:
            px = (self.steady(t) @ np.array([*px, 1.0]))[:2]
        return px

    def pin_visible(self, t):
        """Share of the pin's end that neither hand nor tape covers and that is inside the picture."""
        at = self.hand_at(t)
        r, tt, _ = self.camera.pose(t)
        pin = self.wheel_end.pin_at(self.stroke(t)) + np.array([0, 0, PIN_END_Z])
        rim = [pin + np.array([q * 5.5 * np.cos(a), q * 5.5 * np.sin(a), 0]) for q in (0.4, 1) for a in np.arange(0, 6.28, 0.785)]
        seen = 0
        for point in rim:
            u, v = self.renderer.project(point, r, tt)
            inside = 0 <= u < self.w and 0 <= v < self.h
            seen += inside and (at is None or self.hand_cover(at, r, tt, (u, v)) < 0.5) and not self.tape_covers(r, tt, point)
        return seen / len(rim)

    def tape_covers(self, r, tt, point):
        """Whether the line of sight to the point passes through the blade."""
        zero, along, across = (self.tape[k] for k in ("zero", "along", "across"))
        eye = -r.T @ tt
        n = np.cross(along, across)
        part = (n @ (zero - eye)) / (n @ (point - eye))
        at = eye + part * (point - eye) - zero
        return part < 1 and 0 < at @ along < 12.4 * INCH and 0 < at @ across < 19.05

    def hand_cover(self, at, r, tt, uv):
        m = self.renderer.homography(self.hand, r, tt, {"hand": (np.eye(3), at)})
        q = np.linalg.inv(m) @ np.array([uv[0] - 0.5, uv[1] - 0.5, 1.0])
        x, y = np.round(q[:2] / q[2]).astype(int)
        h, w = self.hand.tex.shape[:2]
        return self.hand.tex[y, x, 1] if 0 <= x < w and 0 <= y < h else 0.0


def rounded(values, digits):
    return np.round(np.asarray(values, float), digits).tolist()


def pose_rows(r, t):
    return [rounded(row, 8)[:3] + [round(float(q), 4)] for row, q in zip(r, t)]


def frame_truth(clip, index, file_s):
    t = clip.real(file_s)
    r, tt, _ = clip.camera.pose(t)
    marks = clip.marks_at(t)
    stroke = clip.stroke(t)
    exposure = clip.spec["exposure_s"]
    a, b = (clip.marks_at(t + q * exposure / 2, False)["clevisPin"][1] for q in (-1, 1))
    return {
        "index": index, "timeS": round(float(file_s), 6), "realTimeS": round(float(t), 6), "strokeMm": round(stroke, 4),
        "armAngleDeg": round(clip.wheel_end.state(stroke)["arm_deg"], 4), "pinVisible": round(clip.pin_visible(t), 3),
        "pinBlurPx": round(float(np.linalg.norm(a - b)), 2), "cameraFromChamber": pose_rows(r, tt),
        "points": {k: rounded(px, 3) for k, (_, px) in marks.items()},
    }


def view_truth(clip, state, index, file_s):
    t = clip.real(file_s)
    r, tt, _ = clip.camera.pose(t)
    tape = clip.tape
    graduations = [(q / 4, tape["zero"] + tape["along"] * (q / 4 * INCH)) for q in range(1, 48)]
    points = {k: {"mm": rounded(mm, 3), "px": rounded(px, 3)} for k, (mm, px) in clip.marks_at(t).items()}
    seen = [(i, mm, clip.seen(t, "tape", mm)) for i, mm in graduations]
    points["tapeGraduations"] = [{"inches": i, "mm": rounded(mm, 3), "px": rounded(px, 3)} for i, mm, px in seen
                                 if 5 < px[0] < clip.w - 5 and 5 < px[1] < clip.h - 5 and i < 11.5]
    band = [(i * 15, np.array([-54, 102.8 * np.cos(np.radians(i * 15)), -102.8 * np.sin(np.radians(i * 15))])) for i in range(24)]
    points["clampBand"] = [{"angleDeg": a, "mm": rounded(mm, 3), "px": rounded(clip.seen(t, "band", mm), 3)} for a, mm in band]
    return {"state": state, "file": "clip.mp4", "frameIndex": index, "timeS": round(float(file_s), 6), "widthPx": clip.w, "heightPx": clip.h,
            "focalPx": clip.camera.f, "principalPx": rounded(clip.principal, 3), "cameraFromChamber": pose_rows(r, tt), "points": points}


def truth(clip):
    s, times = clip.spec, clip.clock()
    frames = [frame_truth(clip, i, t) for i, t in enumerate(times)]
    strokes = np.array([f["strokeMm"] for f in frames])
    held = int(np.argmax(strokes))
    if s["applications"] and s["applications"][0][0] >= 0:
        start, takes, back, _, _ = s["applications"][0]
        middle = (start + 1.6 * takes + min(back, clip.real(times[-1]))) / 2
        held = int(np.argmin(np.abs(np.array([f["realTimeS"] for f in frames]) - middle)))
    released, applied = clip.wheel_end.state(frames[s["seed_frame"]]["strokeMm"]), clip.wheel_end.state(frames[held]["strokeMm"])
    still = [{"name": p.name, "still": p.frame == "still", "originMm": rounded(p.origin, 3), "alongMm": rounded(p.a, 6), "acrossMm": rounded(p.b, 6)}
             for p in clip.renderer.patches]
    return {
        "title": f"Gravel trailer, followed clip: {clip.name}", "notMeasured": "invented scene, rendered", "seed": clip.seed,
        "chamber": {"family": "clamp", "type": "30", "strokeClass": "standard", "clampBandDiameterMm": 205.581}, "armLengthMm": 139.7,
        "strokeMm": round(float(frames[held]["strokeMm"] - frames[s["seed_frame"]]["strokeMm"]), 4),
        "armAngleReleasedDeg": round(released["arm_deg"], 3), "armAngleAppliedDeg": round(applied["arm_deg"], 3),
        "chamberFrame": {"zPoints": "away from the camera", "camshaftMm": rounded(clip.wheel_end.camshaft, 3),
                         "pinReleasedMm": rounded(released["pin"], 3), "pinAppliedMm": rounded(applied["pin"], 3)},
        "framesPerSecond": s["fps"], "slowMotion": s["slow"], "spec": {k: v for k, v in s.items()},
        "applications": applications(clip, frames),
        "views": [view_truth(clip, "released", s["seed_frame"], times[s["seed_frame"]]), view_truth(clip, "applied", held, times[held])],
        "frames": frames, "patches": still,
    }


def applications(clip, frames):
    """Largest stroke of each while held (mean of its held frames), and when it starts in the clip's own time."""
    found = []
    for start, takes, back, back_takes, share in clip.spec["applications"]:
        held = [f["strokeMm"] for f in frames if start + 1.7 * takes < f["realTimeS"] < back]
        if start >= 0 and held:
            found.append({"startS": start * clip.spec["slow"], "heldFromS": (start + takes) * clip.spec["slow"], "backS": back * clip.spec["slow"], "strokeMm": round(float(np.mean(held)), 4)})
    return found


def encoder(clip, file):
    s = clip.spec
    # The variable clock: frame n at (n + n div 9 + 0.24 sin 1.7 n) / 30 s, rounded to 1/30000 s as in Clip.clock.
    clock = ["-vf", "setpts='round((N+floor(N/9)+0.24*sin(1.7*N))*1000)/30000/TB'", "-vsync", "passthrough", "-enc_time_base", "1:30000"] if s["variable"] else []
    return subprocess.Popen(
        ["ffmpeg", "-y", "-v", "error", "-f", "rawvideo", "-pix_fmt", "gray", "-s", f"{clip.w}x{clip.h}", "-r", "30000" if s["variable"] else str(s["fps"]), "-i", "-", *clock,
         "-c:v", "libx264", "-preset", "medium", "-threads", "1", "-crf", str(s["crf"]), "-bf", "2", "-g", "30", "-pix_fmt", "yuv420p", "-color_range", "tv",
         "-colorspace", "bt709", "-color_primaries", "bt709", "-color_trc", "bt709", "-video_track_timescale", "30000", "-an", "-movflags", "+faststart", file],
        stdin=subprocess.PIPE)


def write_truth(clip, out):
    with open(os.path.join(out, "truth.json"), "w") as file:
        json.dump(truth(clip), file, indent=1)


def make(name, changes, folder):
    clip = Clip(name, changes)
    out = os.path.join(folder, name)
    os.makedirs(out, exist_ok=True)
    began = time.perf_counter()
    ffmpeg = encoder(clip, os.path.join(out, f"clip.{os.getpid()}.mp4"))
    for index, file_s in enumerate(clip.clock()):
        ffmpeg.stdin.write(clip.picture(clip.real(file_s), index).tobytes())
    ffmpeg.stdin.close()
    if ffmpeg.wait():
        raise SystemExit(f"{name}: ffmpeg failed")
    ids = np.full((clip.h, clip.w), 255, np.uint8)
    at = clip.real(clip.clock()[clip.spec["seed_frame"]])
    clip.paint(at, (0, clip.h), np.zeros((clip.h, clip.w), np.float32), ids)
    cv2.imwrite(os.path.join(out, "ids.pgm"), ids)
    write_truth(clip, out)
    os.replace(os.path.join(out, f"clip.{os.getpid()}.mp4"), os.path.join(out, "clip.mp4"))
    print(f"{name}: {clip.spec['frames']} frames, {(time.perf_counter() - began) / clip.spec['frames']:.3f} s each", flush=True)


if __name__ == "__main__":
    cv2.setNumThreads(1)
    target, wanted = sys.argv[1], sys.argv[2:]
    for clip_name, clip_changes in [*CLIPS, *HELD_BACK]:
        if clip_name in wanted or (not wanted and clip_name in dict(CLIPS)):
            make(clip_name, clip_changes, target)
