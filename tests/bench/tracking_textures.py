"""Gray textures of what stands about a wheel end, by noise of several sizes. Values 0 to 255, sizes in mm, seeded."""
import cv2
import numpy as np


def noise(rng, h, w, cells, stretch=(1.0, 1.0)):
    """Smooth noise of unit spread; `cells` is the grain in pixels, stretched along y and x."""
    gh = max(2, int(np.ceil(h / (cells * stretch[0]))) + 2)
    gw = max(2, int(np.ceil(w / (cells * stretch[1]))) + 2)
    grid = rng.standard_normal((gh, gw)).astype(np.float32)
    return cv2.resize(grid, (w, h), interpolation=cv2.INTER_CUBIC) * 1.25


def octaves(rng, h, w, largest_px, fall=0.62, stretch=(1.0, 1.0)):
    total = np.zeros((h, w), np.float32)
    size, weight, power = float(largest_px), 1.0, 0.0
    while size >= 1.0:
        total += weight * noise(rng, h, w, size, stretch)
        power += weight**2
        size, weight = size / 2, weight * fall
    return total / np.sqrt(power)


def mixed(mask, low, high):
    """0 to 1 as the mask passes from low to high."""
    return np.clip((mask - low) / (high - low), 0, 1)


def cast_iron(rng, h, w, px):
    relief = octaves(rng, h, w, 5 * px, 0.85)
    light = cv2.Sobel(cv2.GaussianBlur(relief, (0, 0), max(0.5, 0.25 * px)), cv2.CV_32F, 1, 1, ksize=3)
    return 52 + 12 * octaves(rng, h, w, 22 * px) + 9 * light + 18 * mixed(octaves(rng, h, w, 9 * px), 0.6, 1.2)


def housing(rng, h, w, px):
    """Black paint, worn through to rust in places, with dried splashes."""
    rust = mixed(octaves(rng, h, w, 34 * px, 0.7), 0.35, 0.6)
    paint = 26 + 5 * octaves(rng, h, w, 14 * px)
    rusty = 62 + 22 * octaves(rng, h, w, 5 * px, 0.8)
    splash = mixed(octaves(rng, h, w, 18 * px, 0.75), 0.9, 1.5)
    return (paint * (1 - rust) + rusty * rust) * (1 - 0.5 * splash) + 95 * 0.5 * splash


def clean_paint(rng, h, w, px):
    return 30 + 3 * octaves(rng, h, w, 60 * px) + 1.2 * octaves(rng, h, w, 2 * px, 0.9)


def rusty_plate(rng, h, w, px):
    return 58 + 20 * octaves(rng, h, w, 16 * px, 0.75) + 14 * mixed(octaves(rng, h, w, 7 * px), 0.8, 1.3)


def steel_band(rng, h, w, px):
    worn = mixed(octaves(rng, h, w, 16 * px), 0.1, 0.6)
    return 118 * (1 - worn) + (60 + 20 * octaves(rng, h, w, 4 * px)) * worn + 7 * octaves(rng, h, w, 5 * px)


def rod_steel(rng, h, w, px):
    """Streaks along the rod (x), grease and rust."""
    streak = octaves(rng, h, w, 5 * px, 0.7, (1, 6))
    rust = mixed(octaves(rng, h, w, 9 * px, 0.75), 0.45, 1.0)
    return 112 + 16 * streak - 58 * rust + 8 * octaves(rng, h, w, 2 * px, 0.9)


def machined(rng, h, w, px):
    return 128 + 22 * octaves(rng, h, w, 2.6 * px, 0.9) - 46 * mixed(octaves(rng, h, w, 5 * px), 0.5, 1.1)


def glove(rng, h, w, px):
    return 58 + 14 * octaves(rng, h, w, 16 * px, 0.7) + 6 * octaves(rng, h, w, 1.6 * px, 0.9)


def gravel(rng, h, w, px):
    """Heaped stones, each with a lit and a dark side; px is pixels per mm, stones 12 to 70 mm across."""
    ground = np.clip(96 + 14 * octaves(rng, h, w, max(6.0, 60 * px)), 30, 200).astype(np.float32)
    for _ in range(int(min(9000, h * w * 0.9 / (18 * px) ** 2))):
        r = max(1.0, px * (6 + 29 * rng.random() ** 3))
        at = (int(rng.random() * w * 8), int(rng.random() * h * 8))
        axes = (int(8 * r), int(8 * r * (0.55 + 0.4 * rng.random())))
        turn, tone = float(rng.random() * 180), float(70 + 85 * rng.random())
        dark = (at[0] + int(2.2 * r), at[1] + int(3.0 * r))
        cv2.ellipse(ground, dark, axes, turn, 0, 360, tone * 0.45, -1, cv2.LINE_8, 3)
        cv2.ellipse(ground, at, axes, turn, 0, 360, tone, -1, cv2.LINE_8, 3)
    return cv2.GaussianBlur(ground, (0, 0), 0.6) + 7 * octaves(rng, h, w, 5)


def tape_face(rng, h, w, px, zero_px):
    """Printed steel tape: y = 0 is the graduated edge; lines at every 1/16 in, longer at 1/8, 1/4, 1/2 and 1 in."""
    fine = 8
    face = np.full((h, w * fine), 176, np.float32)
    inch = 25.4 * px * fine
    for k in range(1, 14 * 16):
        x = zero_px * fine + k * inch / 16
        half = 0.22 * px * fine
        long = 1.0 if k % 16 == 0 else 0.29 if k % 8 == 0 else 0.22 if k % 4 == 0 else 0.165 if k % 2 == 0 else 0.11
        if x + half >= w * fine:
            break
        face[: int(long * h), int(round(x - half)) : int(round(x + half))] = 34
        if long < 1:
            face[h - int(0.8 * long * h) :, int(round(x - half)) : int(round(x + half))] = 34
    face = cv2.resize(face, (w, h), interpolation=cv2.INTER_AREA)
    # Read from the camera's side the blade lies the other way up.
    face = np.ascontiguousarray(face[::-1])
    for inch_no in range(1, 13):
        x = int(zero_px + inch_no * 25.4 * px)
        cv2.putText(face, str(inch_no), (int(x - 7.5 * px * (1 + 0.6 * (inch_no > 9))), int(0.62 * h)),
                    cv2.FONT_HERSHEY_SIMPLEX, 0.28 * px, 34, max(1, int(0.9 * px)), cv2.LINE_AA)
    face = face[::-1]
    dirt = mixed(octaves(rng, h, w, 14 * px, 0.75), 0.5, 1.6)
    return face * (1 - 0.55 * dirt) + 60 * 0.55 * dirt + 4 * octaves(rng, h, w, 3 * px)
