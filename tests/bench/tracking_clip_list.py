"""What each clip is like. Names say what is hard about it; seeds are fixed. Anything not said is as in `plain`."""

PLAIN = {
    "size": (1920, 1080), "fps": 30.0, "frames": 90, "f_over_w": 0.76, "distance": 760.0, "yaw": 12.0, "lift": 3.0, "roll": 1.2,
    "aim": (100.0, 45.0, 0.0), "down_y": -1, "shake": 1.0, "pan": (0.0, 0.0), "pan_from": 0.0, "pan_takes": 0.0, "to_and_fro": (0.0, 0.0),
    "stroke": 52.0, "creep": 0.0, "applications": [(0.8, 0.4, 2.2, 0.36, 1.0)], "seed_frame": 8,
    "exposure_s": 0.0, "readout_s": 0.0, "contrast": 1.0, "noise": 1.6, "jump": None, "shadow": None, "steadied": False,
    "hand": [], "crf": 22, "variable": False, "slow": 1.0, "look": "worn", "tape_turn": 0.0, "tape_before": 25.8,
    "camshaft": (174.6, 135.4), "pin_x": 127.4, "band": 48.6,
}

TWO = [(0.7, 0.35, 1.7, 0.3, 1.0), (2.6, 0.35, 3.6, 0.3, 0.97)]
THREE = [(0.6, 0.32, 1.35, 0.28, 1.0), (2.05, 0.32, 2.75, 0.28, 0.985), (3.4, 0.32, 4.15, 0.28, 1.01)]

CLIPS = [
    ("plain", {}),
    ("near-wide", {"f_over_w": 0.7, "distance": 508.0, "aim": (100, 55, 0), "stroke": 44.0}),
    ("far-long", {"f_over_w": 1.6, "distance": 1016.0, "aim": (105, 60, 0), "shake": 0.7, "down_y": 1}),
    ("oblique", {"yaw": 33.0, "lift": 10.0, "f_over_w": 0.85, "distance": 720.0, "stroke": 38.0}),
    ("small-24", {"size": (1280, 720), "fps": 24.0, "applications": [(0.9, 0.42, 2.7, 0.36, 1.0)], "f_over_w": 0.9, "stroke": 61.0, "tape_turn": -5.0}),
    ("small-crf30", {"size": (1280, 720), "crf": 30, "down_y": 1, "yaw": 20.0}),
    ("rate-60", {"fps": 60.0, "frames": 120, "applications": [(0.5, 0.38, 1.5, 0.3, 1.0)], "crf": 25}),
    ("ultra-30", {"size": (3840, 2160), "frames": 75, "applications": [(0.7, 0.4, 1.9, 0.3, 1.0)], "stroke": 47.0}),
    ("ultra-60", {"size": (3840, 2160), "fps": 60.0, "frames": 100, "applications": [(0.45, 0.35, 1.3, 0.25, 1.0)], "exposure_s": 1 / 120, "crf": 26}),
    ("pan", {"pan": (110.0, 5.0), "pan_from": 0.3, "pan_takes": 2.4, "f_over_w": 0.72}),
    ("shaky", {"shake": 2.6, "yaw": 18.0}),
    ("dim", {"contrast": 0.42, "noise": 5.0, "exposure_s": 1 / 60, "shake": 0.8}),
    ("exposure-jump", {"jump": (1.6, 1.75), "shadow": (0.5, 2.9), "down_y": 1}),
    ("blur-60th", {"exposure_s": 1 / 60, "shake": 1.3}),
    ("blur-30th", {"exposure_s": 1 / 30, "contrast": 0.55, "noise": 3.5, "yaw": 22.0}),
    ("rolling", {"readout_s": 0.022, "shake": 1.4}),
    ("rolling-blur", {"readout_s": 0.018, "exposure_s": 1 / 90, "shake": 1.8, "down_y": 1, "crf": 26}),
    ("steadied", {"steadied": True, "shake": 0.5}),
    ("hand-held-part", {"hand": [(1.45, 0.4)], "frames": 100, "applications": [(0.7, 0.4, 2.6, 0.36, 1.0)]}),
    ("hand-both", {"hand": [(0.45, 0.4), (1.65, 0.42)], "frames": 110, "applications": [(0.62, 0.4, 2.8, 0.36, 1.0)], "yaw": 20.0, "seed_frame": 4}),
    ("crf34", {"crf": 34, "shake": 1.2}),
    ("variable-rate", {"variable": True, "crf": 24, "exposure_s": 1 / 100}),
    ("twice", {"applications": TWO, "frames": 125, "creep": 0.6, "stroke": 46.0}),
    ("thrice", {"applications": THREE, "frames": 145, "size": (1280, 720), "f_over_w": 0.9, "stroke": 40.0}),
    ("none", {"applications": [], "frames": 80}),
    ("held-all-through", {"applications": [(-2.0, 0.4, 90.0, 0.3, 1.0)], "frames": 80, "down_y": 1}),
    ("slow-motion", {"size": (1280, 720), "slow": 8.0, "frames": 150, "applications": [(0.14, 0.22, 60.0, 0.3, 1.0)], "f_over_w": 0.85}),
    ("clean-paint", {"look": "clean", "yaw": 8.0, "noise": 2.2}),
    ("tape-before-pin", {"tape_turn": 7.0, "stroke": 58.0}),
    ("all-at-once", {"exposure_s": 1 / 60, "readout_s": 0.016, "shake": 1.7, "contrast": 0.6, "noise": 3.0, "crf": 28, "hand": [(1.4, 0.4)], "frames": 100,
                     "applications": [(0.7, 0.4, 2.5, 0.36, 1.0)], "yaw": 25.0, "f_over_w": 0.9, "stroke": 57.0}),
    # The phone moved to and fro by a hand's width: how far to each side, mm, and how long a whole turn takes, s.
    ("sway-plain", {"to_and_fro": (45.0, 1.6)}),
    ("sway-slow", {"to_and_fro": (40.0, 3.0), "frames": 120, "applications": [(1.5, 0.4, 3.4, 0.36, 1.0)], "yaw": 18.0}),
    ("sway-half", {"to_and_fro": (22.0, 1.6)}),
    ("sway-near", {"to_and_fro": (40.0, 1.8), "f_over_w": 0.72, "distance": 560.0, "aim": (100, 55, 0), "stroke": 44.0}),
    ("sway-far", {"to_and_fro": (60.0, 2.0), "f_over_w": 1.3, "distance": 980.0, "stroke": 60.0, "down_y": 1}),
    ("sway-oblique", {"to_and_fro": (45.0, 1.8), "yaw": 30.0, "lift": 8.0, "stroke": 38.0}),
    ("sway-dim", {"to_and_fro": (45.0, 2.0), "contrast": 0.42, "noise": 5.0, "exposure_s": 1 / 100}),
    ("sway-small", {"size": (1280, 720), "to_and_fro": (45.0, 1.8), "f_over_w": 0.85}),
]

# Of tracking-offered.ts alone, and looked at only after what is measured with them was done: the tape at other depths before the rod.
HELD_BACK = [
    ("held-1", {"to_and_fro": (40.0, 1.7), "yaw": 8.0, "lift": 6.0, "tape_before": 14.0, "stroke": 48.0, "distance": 700.0, "f_over_w": 0.74}),
    ("held-2", {"to_and_fro": (30.0, 1.5), "yaw": 20.0, "lift": 4.0, "tape_before": 34.0, "stroke": 56.0, "down_y": 1}),
    ("held-3", {"to_and_fro": (50.0, 2.2), "yaw": 26.0, "lift": 12.0, "tape_before": 20.0, "stroke": 40.0, "distance": 640.0, "f_over_w": 0.72}),
    ("held-4", {"to_and_fro": (35.0, 1.8), "yaw": 5.0, "lift": 2.0, "tape_before": 30.0, "stroke": 62.0, "crf": 26}),
    ("held-5", {"to_and_fro": (45.0, 2.0), "yaw": 15.0, "lift": 8.0, "tape_before": 10.0, "stroke": 45.0, "distance": 860.0, "f_over_w": 0.95, "contrast": 0.7, "noise": 3.0}),
    ("held-6", {"to_and_fro": (40.0, 1.6), "yaw": 23.0, "lift": 0.0, "stroke": 58.0, "exposure_s": 1 / 120, "shake": 1.4, "tape_turn": -4.0, "f_over_w": 0.8}),
    # The tape seen from the side, for what finds its graduations.
    ("held-7", {"to_and_fro": (40.0, 1.8), "yaw": -24.0, "lift": 9.0, "tape_before": 18.0, "stroke": 50.0, "distance": 700.0, "f_over_w": 0.74}),
    ("held-8", {"to_and_fro": (45.0, 1.6), "yaw": 32.0, "lift": -6.0, "tape_before": 30.0, "stroke": 42.0, "down_y": 1, "contrast": 0.6, "noise": 3.5}),
    ("held-9", {"to_and_fro": (60.0, 2.0), "yaw": -31.0, "lift": 14.0, "tape_before": 12.0, "stroke": 58.0, "distance": 1150.0, "f_over_w": 1.25}),
    ("held-10", {"to_and_fro": (35.0, 1.7), "yaw": 28.0, "lift": 16.0, "tape_before": 24.0, "stroke": 36.0, "distance": 620.0, "f_over_w": 0.7, "exposure_s": 1 / 120}),
    ("held-11", {"to_and_fro": (45.0, 2.1), "yaw": -19.0, "lift": -10.0, "tape_before": 34.0, "stroke": 47.0, "down_y": 1, "crf": 27, "tape_turn": 3.0}),
    ("held-12", {"to_and_fro": (50.0, 1.9), "yaw": 25.0, "lift": 3.0, "tape_before": 10.0, "stroke": 54.0, "distance": 900.0, "f_over_w": 1.0, "look": "clean", "contrast": 1.1}),
    # Drawn once, filmed as the page asks: a hand's width to and fro, up to 18 degrees from square on the side from which the rim shows.
    ("held-13", {"to_and_fro": (51.0, 1.9), "yaw": 5.0, "lift": -1.0, "tape_before": 20.0, "stroke": 48.0, "distance": 760.0, "f_over_w": 0.72, "shake": 0.9, "contrast": 0.76, "noise": 3.1}),
    ("held-14", {"to_and_fro": (48.0, 1.9), "yaw": 14.0, "lift": 1.0, "tape_before": 16.0, "stroke": 65.0, "distance": 620.0, "f_over_w": 0.79, "shake": 0.8, "contrast": 0.89, "noise": 4.0}),
    ("held-15", {"to_and_fro": (44.0, 2.0), "yaw": 11.0, "lift": -9.0, "tape_before": 23.0, "stroke": 52.0, "distance": 590.0, "f_over_w": 0.73, "shake": 0.9, "down_y": 1, "contrast": 0.75, "noise": 3.6}),
    ("held-16", {"to_and_fro": (50.0, 2.1), "yaw": 13.0, "lift": 2.0, "tape_before": 29.0, "stroke": 62.0, "distance": 850.0, "f_over_w": 0.71, "shake": 1.0, "crf": 27}),
    ("held-17", {"to_and_fro": (55.0, 1.5), "yaw": 9.0, "lift": 7.0, "tape_before": 27.0, "stroke": 39.0, "distance": 840.0, "f_over_w": 0.8, "shake": 0.9}),
    ("held-18", {"to_and_fro": (39.0, 1.9), "yaw": 16.0, "lift": 8.0, "tape_before": 20.0, "stroke": 59.0, "distance": 640.0, "f_over_w": 0.74, "shake": 0.9, "down_y": 1, "exposure_s": 1 / 120}),
    ("held-19", {"to_and_fro": (52.0, 2.0), "yaw": 8.0, "lift": -4.0, "tape_before": 21.0, "stroke": 47.0, "distance": 910.0, "f_over_w": 0.85, "shake": 1.0, "down_y": 1, "contrast": 0.64, "noise": 3.6}),
    ("held-20", {"to_and_fro": (53.0, 2.1), "yaw": 11.0, "lift": -7.0, "tape_before": 10.0, "stroke": 59.0, "distance": 600.0, "f_over_w": 0.85, "shake": 1.1, "down_y": 1, "crf": 24}),
    ("held-21", {"to_and_fro": (50.0, 1.7), "yaw": 6.0, "lift": -6.0, "tape_before": 34.0, "stroke": 51.0, "distance": 600.0, "f_over_w": 0.71, "shake": 0.6}),
    ("held-22", {"to_and_fro": (36.0, 2.0), "yaw": 7.0, "lift": -2.0, "tape_before": 15.0, "stroke": 46.0, "distance": 910.0, "f_over_w": 0.73, "shake": 1.1, "down_y": 1, "crf": 23}),
]
