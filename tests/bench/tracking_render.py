"""Pictures of the patches: each carried by its own homography; one rows' band or the whole picture at an instant."""
import cv2
import numpy as np
from tracking_mechanism import rotation


class Renderer:
    def __init__(self, patches, wheel_end, camera, size, principal):
        self.patches, self.wheel_end, self.camera = patches, wheel_end, camera
        self.w, self.h = size
        self.k = np.array([[camera.f, 0, principal[0]], [0, camera.f, principal[1]], [0, 0, 1.0]])

    def soften(self, t, frames):
        """Textures that the view shortens are blurred along that way beforehand, so that nothing aliases."""
        r, tt, _ = self.camera.pose(t)
        for p in self.patches:
            m = self.homography(p, r, tt, frames)
            h, w = p.tex.shape[:2]
            c = np.array([w / 2, h / 2])
            px = lambda q: (lambda v: v[:2] / v[2])(m @ np.array([*q, 1.0]))
            sx, sy = [np.linalg.norm(px(c + 0.5 * e) - px(c - 0.5 * e)) for e in np.eye(2)]
            sigma = [0.45 * np.sqrt(max(0.0, (1 / max(s, 0.02)) ** 2 - 1)) + 0.01 for s in (sx, sy)]
            if max(sigma) > 0.15:
                p.tex = cv2.GaussianBlur(p.tex, (0, 0), min(sigma[0], 40), sigmaY=min(sigma[1], 40), borderType=cv2.BORDER_REPLICATE if p.name == "ground" else cv2.BORDER_CONSTANT)

    def frames(self, stroke, hand_at):
        s = self.wheel_end.state(stroke)
        eye = np.eye(3)
        return {
            "still": (eye, np.zeros(3)),
            "rod": (rotation("z", s["rod_rad"]), s["pin"]),
            "arm": (rotation("z", s["arm_rad"]), self.wheel_end.camshaft),
            "hand": (eye, hand_at) if hand_at is not None else None,
        }, s

    def homography(self, p, r, t, frames):
        fr, fo = frames[p.frame]
        a, b, o = fr @ p.a, fr @ p.b, fr @ p.origin + fo
        m = self.k @ np.stack([r @ a, r @ b, r @ (o + 0.5 * (a + b)) + t], axis=1)
        m[:2] -= 0.5 * m[2]
        return m

    def project(self, point, r, t):
        q = self.k @ (r @ np.asarray(point, float) + t)
        return q[:2] / q[2]

    def paint(self, out, rows, r, t, frames, patches=None, ids=None):
        """Paints into out[rows]; coordinates stay those of the whole picture."""
        y0, y1 = rows
        for index, p in enumerate(patches or self.patches):
            if frames[p.frame] is None:
                continue
            m = self.homography(p, r, t, frames)
            h, w = p.tex.shape[:2]
            corners = m @ np.array([[0, w, w, 0], [0, 0, h, h], [1, 1, 1, 1.0]])
            if np.any(corners[2] < 30):
                continue
            uv = corners[:2] / corners[2]
            if np.cross(uv[:, 1] - uv[:, 0], uv[:, 3] - uv[:, 0]) <= 0 and p.name[:4] in ("body", "clam", "pres", "face", "brac", "band"):
                continue
            u0, v0 = np.floor(uv.min(1)).astype(int) - 1
            u1, v1 = np.ceil(uv.max(1)).astype(int) + 2
            if p.name == "ground":
                u0, v0, u1, v1 = 0, 0, self.w, self.h
            u0, v0, u1, v1 = max(0, u0), max(y0, v0), min(self.w, u1), min(y1, v1)
            if u1 <= u0 or v1 <= v0:
                continue
            shift = np.array([[1, 0, -u0], [0, 1, -v0], [0, 0, 1.0]])
            # A photograph of something wide far behind need not be cut; all else ends in transparent pixels.
            border = cv2.BORDER_REPLICATE if p.name == "ground" else cv2.BORDER_CONSTANT
            part = cv2.warpPerspective(p.tex, shift @ m, (u1 - u0, v1 - v0), flags=cv2.INTER_LINEAR, borderMode=border)
            cover = part[..., 1]
            value = part[..., 0]
            if p.cut_at_face:
                keep = self.beyond_face(r, t, (u0, v0, u1, v1))
                cover, value = cover * keep, value * keep
            region = out[v0 - y0 : v1 - y0, u0:u1]
            region *= 1 - cover
            region += value
            if ids is not None:
                ids[v0:v1, u0:u1][cover > 0.5] = index

    def beyond_face(self, r, t, box):
        """Cover of what lies outwards of the face plane, near the rod's axis."""
        u0, v0, u1, v1 = box
        top, bottom = self.project((0, -40, -8), r, t), self.project((0, 40, -8), r, t)
        out = self.project((60, 0, -8), r, t)
        n = np.array([bottom[1] - top[1], top[0] - bottom[0]])
        n /= np.linalg.norm(n)
        if (out - top) @ n < 0:
            n = -n
        u, v = np.arange(u0, u1) + 0.5 - top[0], np.arange(v0, v1) + 0.5 - top[1]
        return np.clip(u[None, :] * n[0] + v[:, None] * n[1] + 0.5, 0, 1).astype(np.float32)
