"""Printed hands made of strokes: the Hershey simplex alphabet (public, with its acknowledgement in docs/reading.md), every
point moved a little by a writer of its own and every sign written with the same pen."""

import numpy as np
from PIL import Image, ImageDraw

FINER = 3
# Points from the top of a capital to its foot, in the alphabet's own units.
CAPITAL = 21


def alphabet(path):
    """Sign to strokes: each a list of points, the left edge at 0; and the advance."""
    rows, signs = [], {}
    for line in open(path, encoding="ascii").read().split("\n"):
        if line[:5].strip().isdigit() and line[5:8].strip().isdigit():
            rows.append(line)
        elif rows:
            rows[-1] += line
    for at, line in enumerate(rows[:95]):
        pairs = [
            (ord(line[i]) - ord("R"), ord(line[i + 1]) - ord("R")) if line[i : i + 2] != " R" else None
            for i in range(8, len(line) - 1, 2)
        ]
        (left, right), points = pairs[0], pairs[1:]
        strokes, open_stroke = [], []
        for point in points + [None]:
            if point is None:
                if open_stroke:
                    strokes.append(open_stroke)
                open_stroke = []
            else:
                open_stroke.append((point[0] - left, point[1] + 12))
        signs[chr(32 + at)] = (strokes, right - left)
    return signs


class Writer:
    """A hand: slant, width, unrest, pen; writes a sign a little differently each time."""

    def __init__(self, signs, capital, roll):
        self.signs, self.capital, self.roll = signs, capital, roll
        self.unit = capital / CAPITAL
        self.slant, self.broad = roll.normal(0.05, 0.15), roll.uniform(0.7, 1.2)
        self.unrest, self.pen = roll.uniform(0.3, 1.5), capital * roll.uniform(0.05, 0.14)
        self.habit = {}

    def has(self, sign):
        return sign in self.signs

    def glyph(self, sign):
        """Alpha of the sign, where its left top lies from the pen's place on the base line, and the advance."""
        strokes, advance = self.signs[sign]
        if sign not in self.habit:
            self.habit[sign] = [self.roll.normal(0, self.unrest, (len(stroke), 2)) for stroke in strokes]
        u, pad = self.unit, int(self.capital * 0.6) + 4
        width = int(advance * self.broad * u) + 2 * pad
        height = int(self.capital * 1.5) + 2 * pad
        image = Image.new("L", (width * FINER, height * FINER), 0)
        pen = ImageDraw.Draw(image)
        thick = max(FINER, int(self.pen * FINER))
        grow, lift = self.roll.normal(1, 0.06), self.roll.normal(0, 0.05) * self.capital
        for stroke, habit in zip(strokes, self.habit[sign]):
            points = np.array(stroke, float) + habit + self.roll.normal(0, self.unrest * 0.4, (len(stroke), 2))
            y = (points[:, 1] - CAPITAL) * grow
            x = points[:, 0] * self.broad - y * self.slant
            placed = [((px * u + pad) * FINER, ((py + CAPITAL) * u + pad + lift) * FINER) for px, py in zip(x, y)]
            pen.line(placed, fill=255, width=thick, joint="curve")
            for px, py in (placed[0], placed[-1]):
                pen.ellipse((px - thick / 2, py - thick / 2, px + thick / 2, py + thick / 2), fill=255)
        alpha = np.asarray(image.resize((width, height), Image.BOX))
        return alpha, -pad, -pad - int(self.capital), advance * self.broad * u
