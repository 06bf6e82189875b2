"""A plain way to follow a clip, for comparison: features followed from frame to frame, a similarity for the camera's motion, the pin followed
likewise, two graduations of the tape for the scale.  /usr/bin/python3 tests/bench/tracking_opencv.py CLIP MARKS.json ANSWER.json

MARKS.json: { seedIndex, face, pin, camshaft, tape: [{ mm, px }] }, all in pixels from the corner of the first one.
"""
import json
import sys
import time
import cv2
import numpy as np

LK = {"winSize": (21, 21), "maxLevel": 4, "criteria": (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 30, 0.01)}
PIN_LK = {**LK, "winSize": (31, 31)}
THERE_AND_BACK_PX = 1.0


def followed(last, frame, points, options, guess=None):
    flags = cv2.OPTFLOW_USE_INITIAL_FLOW if guess is not None else 0
    there, seen, _ = cv2.calcOpticalFlowPyrLK(last, frame, points, None if guess is None else guess.copy(), flags=flags, **options)
    back, seen_back, _ = cv2.calcOpticalFlowPyrLK(frame, last, there, points.copy(), flags=cv2.OPTFLOW_USE_INITIAL_FLOW, **options)
    good = (seen.ravel() == 1) & (seen_back.ravel() == 1) & (np.linalg.norm((back - points).reshape(-1, 2), axis=1) < THERE_AND_BACK_PX)
    return there, good


class Follower:
    def __init__(self, seed, pin):
        self.last = seed
        self.seed_points = cv2.goodFeaturesToTrack(seed, 300, 0.01, 12 * max(1, seed.shape[1] // 1920), blockSize=7)
        self.points = self.seed_points.copy()
        self.pin = np.array([[pin]], np.float32)
        self.camera = np.array([[1, 0, 0], [0, 1, 0]], float)

    def next(self, frame):
        """Where the pin is (None where it was lost) and how the camera's picture of the seed has moved."""
        there, good = followed(self.last, frame, self.points, LK)
        self.points, self.seed_points = there[good], self.seed_points[good]
        before = self.camera
        if len(self.points) >= 4:
            m, _ = cv2.estimateAffinePartial2D(self.seed_points, self.points, method=cv2.RANSAC, ransacReprojThreshold=3.0)
            self.camera = before if m is None else m
        shift = lambda m: (m @ np.array([*self.pin[0, 0], 1.0]))
        guess = self.pin + (shift(self.camera) - shift(before)).astype(np.float32)
        pin, good = followed(self.last, frame, self.pin, PIN_LK, guess)
        self.pin = pin if good[0] else guess
        self.last = frame
        return (self.pin[0, 0].tolist() if good[0] else None), self.camera


def in_seed(m, point):
    a = np.vstack([m, [0, 0, 1]])
    return (np.linalg.inv(a) @ np.array([*point, 1.0]))[:2]


def stroke_curve(marks, sights):
    """Along the tape from the seed's place, mm, by the tape's outermost two graduations."""
    first, last = np.array(marks["tape"][0]["px"]), np.array(marks["tape"][-1]["px"])
    mm = marks["tape"][-1]["mm"] - marks["tape"][0]["mm"]
    along = (last - first) / np.linalg.norm(last - first)
    per_px = mm / np.linalg.norm(last - first)
    pin = np.array(marks["pin"]) - 0.5
    return [None if p is None else float((in_seed(m, p) - pin) @ along * per_px) for p, m in sights]


def stroke_of(curve):
    seen = np.array([v for v in curve if v is not None])
    low, high = seen.min(), seen.max()
    return float(np.median(seen[seen > high - 0.1 * (high - low)]) - np.median(seen[seen < low + 0.1 * (high - low)]))


def gray_frames(clip):
    video = cv2.VideoCapture(clip)
    while True:
        ok, frame = video.read()
        if not ok:
            return
        yield cv2.cvtColor(frame, cv2.COLOR_BGR2GRAY)


def run(clip, marks):
    seed_index = marks["seedIndex"]
    pin = [v - 0.5 for v in marks["pin"]]
    before, forwards, sights = [], None, {}
    for index, frame in enumerate(gray_frames(clip)):
        if index < seed_index:
            before.append(frame)
        elif index == seed_index:
            forwards, backwards = Follower(frame, pin), Follower(frame, pin)
            sights[index] = (pin, forwards.camera)
            for k in range(seed_index - 1, -1, -1):
                sights[k] = backwards.next(before[k])
            before = []
        else:
            sights[index] = forwards.next(frame)
    return [sights[k] for k in sorted(sights)]


if __name__ == "__main__":
    clip_file, marks_file, answer_file = sys.argv[1:4]
    with open(marks_file) as file:
        given = json.load(file)
    began = time.perf_counter()
    frames = sum(1 for _ in gray_frames(clip_file))
    decode_s = time.perf_counter() - began
    began = time.perf_counter()
    seen = run(clip_file, given)
    whole_s = time.perf_counter() - began
    curve = stroke_curve(given, seen)
    with open(answer_file, "w") as file:
        json.dump({"frames": frames, "decodeS": decode_s, "wholeS": whole_s, "strokeMm": stroke_of(curve), "curveMm": curve,
                   "pin": [None if p is None else [p[0] + 0.5, p[1] + 0.5] for p, _ in seen]}, file)
