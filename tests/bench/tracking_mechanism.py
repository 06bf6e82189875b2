"""The wheel end of the clips, in the chamber frame of sample-media/README.md (mm); z points away from the camera.

Model    pin = camshaft + L (cos phi, sin phi); the rod's inner end slides on the x axis; |pin - inner end| is constant.
Camera   u = cx + f X/Z, v = cy + f Y/Z; pixel (0, 0) is the outer corner of the first one.
"""
import numpy as np

ARM_MM, BEHIND_MM, ROD_R_MM = 139.7, 85.0, 15.875 / 2
PIN_END_Z, SHAFT_END_Z = -25.0, -31.0


class WheelEnd:
    def __init__(self, camshaft, released_pin_x):
        self.camshaft = np.array([*camshaft, 0.0])
        self.released_x = released_pin_x
        pin = self.pin_at(0.0)
        self.rod_mm = float(np.hypot(pin[0] + BEHIND_MM, pin[1]))

    def pin_at(self, stroke):
        x = self.released_x + stroke
        return np.array([x, self.camshaft[1] - np.sqrt(ARM_MM**2 - (x - self.camshaft[0]) ** 2), 0.0])

    def state(self, stroke):
        pin = self.pin_at(stroke)
        inner = np.array([pin[0] - np.sqrt(self.rod_mm**2 - pin[1] ** 2), 0.0, 0.0])
        back, arm = inner - pin, self.camshaft - pin
        return {
            "pin": pin,
            "inner": inner,
            "arm_rad": float(np.arctan2(-arm[1], -arm[0])),
            "rod_rad": float(np.arctan2(-back[1], -back[0])),
            "arm_deg": float(np.degrees(np.arctan2(np.linalg.norm(np.cross(back, arm)), back @ arm))),
        }


def face_point(state, eye):
    """Where a person marks the face: the rod's surface line nearest the camera, in the face plane."""
    along = state["pin"] - state["inner"]
    along = along / np.linalg.norm(along)
    to_eye = eye - state["pin"]
    across = to_eye - along * (along @ to_eye)
    on = state["pin"] + ROD_R_MM * across / np.linalg.norm(across)
    return on - along * on[0] / along[0]


def eased(u):
    """Least-jerk step from 0 to 1."""
    t = min(1.0, max(0.0, u))
    return t**3 * (10 - 15 * t + 6 * t * t)


def settled(u):
    return 1 - np.exp(-u) * (1 + u) if u > 0 else 0.0


def stroke_at(t, full_mm, applications, creep=0.0):
    """applications: (out starts, takes, back starts, takes) in s, a share of full; the last part comes softly."""
    total = 0.0
    for start, takes, back, back_takes, share in applications:
        out = 0.955 * eased((t - start) / takes) + 0.045 * settled((t - start - 0.55 * takes) / (0.225 * takes))
        home = 0.97 * eased((t - back) / back_takes) + 0.03 * settled((t - back - 0.6 * back_takes) / (0.24 * back_takes))
        held = min(max(t - start - takes, 0.0), max(back - start - takes, 0.0))
        total += share * full_mm * (out - home) + creep * held * (1 - eased((t - back) / back_takes))
    return float(total)


def rotation(axis, rad):
    c, s = np.cos(rad), np.sin(rad)
    return {
        "x": np.array([[1, 0, 0], [0, c, -s], [0, s, c]]),
        "y": np.array([[c, 0, s], [0, 1, 0], [-s, 0, c]]),
        "z": np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]]),
    }[axis]


class HandCamera:
    """Stands `distance` from `aim`, `yaw` towards the clevis end, `lift` up, and sways as a hand does."""

    def __init__(self, spec, rng):
        self.spec = spec
        self.f = spec["f"]
        self.down_y = spec["down_y"]
        freqs = [0.35, 0.8, 1.7, 3.4, 7.2]
        self.waves = [
            [(hz * (0.85 + 0.3 * rng.random()), 0.62 / hz**0.85, 2 * np.pi * rng.random()) for hz in freqs] for _ in range(6)
        ]

    def sway(self, t):
        return np.array([sum(a * np.sin(2 * np.pi * hz * t + p) for hz, a, p in set_) for set_ in self.waves])

    def pose(self, t):
        """R and T of camera from chamber."""
        s, d = self.spec, self.down_y
        sway = self.sway(t) * s["shake"]
        pan_mm, pan_deg = s["pan"]
        part = eased((t - s["pan_from"]) / s["pan_takes"]) if s["pan_takes"] else 0.0
        yaw, lift = np.radians(s["yaw"]), np.radians(s["lift"])
        away = np.array([np.cos(lift) * np.sin(yaw), -d * np.sin(lift), -np.cos(lift) * np.cos(yaw)])
        forward = -away
        right = np.cross([0.0, d, 0.0], forward)
        right /= np.linalg.norm(right)
        down = np.cross(forward, right)
        base = np.stack([right, down, forward])
        eye = np.array(s["aim"]) + away * s["distance"] + base.T @ (sway[:3] * np.array([3.2, 3.2, 3.6]))
        wave_mm, wave_s = s["to_and_fro"]
        wave = wave_mm * np.sin(2 * np.pi * t / wave_s) if wave_s else 0.0
        eye = eye + base.T @ np.array([pan_mm * part + wave, 0.0, 0.0])
        # Whoever moves the phone to and fro keeps the brake in the picture.
        turned_deg = np.degrees(np.arctan2(wave, s["distance"]))
        turn = np.radians(sway[3:] * np.array([0.34, 0.34, 0.5]) + np.array([0.0, pan_deg * part + turned_deg, s["roll"]]))
        r = rotation("z", turn[2]) @ rotation("x", turn[0]) @ rotation("y", turn[1]) @ base
        return r, -r @ eye, eye
