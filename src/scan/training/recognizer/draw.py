"""Draws lines of text with what surrounds them on a form, and says what of it is text."""

import pathlib

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from strokes import Writer, alphabet
from texts import EMPTY, SIGNS, STRUCK, TICKED, Texts

# Height of a drawn line; the network sees the middle 48 rows after the damage.
HEIGHT = 64
SHARES = {"typed": 0.42, "dots": 0.09, "book": 0.26, "hand": 0.18, "strokes": 0.05}
SIZES = (15, 17, 19, 21, 23, 24, 25, 26, 27, 28, 29, 31, 34, 37, 40, 44)


class Face:
    """A font at one height of its capitals, its signs drawn once."""

    def __init__(self, path, capital):
        probe = ImageFont.truetype(str(path), 100)
        top, bottom = probe.getbbox("H", anchor="ls")[1::2]
        self.font = ImageFont.truetype(str(path), max(6, round(capital * 100 / max(20, bottom - top))))
        self.capital, self.kept = capital, {}

    def has(self, sign):
        return self.glyph(sign) is not None

    def glyph(self, sign):
        if sign not in self.kept:
            left, top, right, bottom = self.font.getbbox(sign, anchor="ls")
            width, height = right - left + 2, bottom - top + 2
            alpha = np.zeros((0, 0), np.uint8)
            if sign != " ":
                image = Image.new("L", (max(1, width), max(1, height)), 0)
                ImageDraw.Draw(image).text((1 - left, 1 - top), sign, font=self.font, fill=255, anchor="ls")
                alpha = np.asarray(image)
                if alpha.max() == 0:
                    self.kept[sign] = None
                    return None
            self.kept[sign] = (alpha, left - 1, top - 1, self.font.getlength(sign))
        return self.kept[sign]


class Pen:
    def __init__(self, folder, seed, words, held_out=False, hershey="/usr/share/hershey-fonts/rowmans.jhf"):
        self.roll = np.random.default_rng(seed)
        self.texts = Texts(self.roll, words)
        which = "held-out" if held_out else "trained"
        self.files = {group: sorted(pathlib.Path(folder, which, group).glob("*.ttf")) for group in SHARES}
        self.hershey = alphabet(hershey) if not held_out else {}
        self.faces = {}

    def face(self, path, capital):
        key = (path, capital)
        if key not in self.faces:
            self.faces[key] = Face(path, capital)
        return self.faces[key]

    def hand(self, group, capital):
        if group == "strokes":
            return Writer(self.hershey, capital, self.roll)
        files = self.files[group]
        return self.face(files[int(self.roll.integers(len(files)))], capital)

    def line(self, group=None, text=None):
        """(picture with ink 255, label, height of its capitals, group)"""
        roll, chance = self.roll, self.texts.chance
        groups = [name for name in SHARES if self.files[name] or (name == "strokes" and self.hershey)]
        if group is None:
            shares = np.array([SHARES[name] for name in groups])
            group = groups[int(roll.choice(len(groups), p=shares / shares.sum()))]
        capital = int(SIZES[int(roll.integers(len(SIZES)))])
        face = self.hand(group, capital)
        text = self.texts.line() if text is None else text
        # A printed label before what was filled in, in another face.
        label_face = self.hand("book", capital) if chance(0.3) else None
        return Line(self, group, capital, face, label_face).drawn(text)


class Line:
    """One line: where the pen is, and how this machine or hand writes."""

    def __init__(self, pen, group, capital, face, label_face):
        self.pen, self.roll, self.texts = pen, pen.roll, pen.texts
        self.group, self.capital, self.face, self.label_face = group, capital, face, label_face
        self.unsteady = {"typed": 0.025, "dots": 0.0, "book": 0.0, "hand": 0.05, "strokes": 0.03}[group] * (self.roll.random() * 2)
        self.uneven = self.roll.random() * (0.5 if group in ("typed", "dots") else 0.2)
        self.spread = self.roll.uniform(0.92, 1.3) if self.roll.random() < 0.4 else 1.0

    def drawn(self, text):
        roll, chance, capital = self.roll, self.texts.chance, self.capital
        room = (48 - capital) / 2
        base = 32 + capital / 2 + roll.uniform(-0.55, 0.55) * max(2, room) - capital * 0.08
        margin = roll.uniform(0, 16) if chance(0.8) else roll.uniform(-2, 3)
        width = int(len(text) * capital * 1.7 * self.spread + 120)
        canvas = np.zeros((HEIGHT, width), np.uint8)
        self.canvas, self.base = canvas, base
        label, x = [], self.sliver(margin + 1, text)
        struck = self.struck_words(text)
        filled = min((at for at in (text.find("  "), text.find("\2"), text.find(": ")) if at > 0), default=0)
        written, self.face = self.face, self.label_face if self.label_face and filled else self.face
        words_at = []
        for at, sign in enumerate(text):
            if at == filled:
                self.face = written
            x, said = self.put(sign, x, label)
            words_at.append((at, x, said))
            if struck[at] and said and said not in (" ", EMPTY, TICKED):
                label[-1] = STRUCK
        if any(struck):
            self.strike(struck, words_at, margin)
        if text == "":
            x = roll.uniform(20, 220)
        over = roll.uniform(0, 16) if chance(0.8) else roll.uniform(-2, 3)
        sign = SIGNS[1 + int(roll.integers(62))]
        if text and chance(0.03) and self.face.has(sign):
            # The beginning of a word after it, cut by the strip's edge.
            x += capital * roll.uniform(0.6, 2.5)
            after = self.stamp(self.face, sign, x)
            x, over = x + (after - x) * roll.uniform(0.25, 0.6), 0
        end = int(min(width, max(16, x + over)))
        canvas = canvas[:, :end].copy()
        self.canvas = canvas
        self.surround(end)
        said = " ".join("".join(label).split())
        return canvas, said, capital, self.group

    def put(self, sign, x, label):
        roll, capital = self.roll, self.capital
        if sign in "\0\1":
            x = self.box(x, sign == "\1")
            label.append(" " + (TICKED if sign == "\1" else EMPTY) + " ")
            return x, label[-1].strip()
        if sign == "\2":
            for dot in self.texts.blank():
                x = self.stamp(self.face, dot if dot != "…" else ".", x)
            label.append(" ")
            return x, " "
        face = self.face
        if not face.has(sign):
            if not self.pen.face(self.pen.files["book"][0], capital).has(sign):
                return x, ""
            face = self.pen.face(self.pen.files["book"][0], capital)
        if sign != " " and roll.random() < 0.006:
            # Typed over: the wrong sign under, the right one over it with more ink.
            wrong = SIGNS[1 + int(roll.integers(62))]
            if face.has(wrong):
                self.stamp(face, wrong, x, roll.uniform(0.25, 0.6))
        x = self.stamp(face, sign, x)
        label.append(sign)
        return x, sign

    def stamp(self, face, sign, x, ink=None):
        roll, capital = self.roll, self.capital
        alpha, left, top, advance = face.glyph(sign)
        if alpha.size:
            if self.group == "hand" and roll.random() < 0.6:
                alpha = leaning(alpha, roll)
            dy, dx = roll.normal(0, self.unsteady * capital, 2) if self.unsteady else (0, 0)
            self.lay(alpha, x + left + dx, self.base + top + dy, ink if ink is not None else 1 - roll.random() * self.uneven)
        return x + advance * self.spread

    def lay(self, alpha, x, y, ink):
        canvas, (h, w) = self.canvas, alpha.shape
        x, y = int(round(x)), int(round(y))
        x0, y0, x1, y1 = max(0, x), max(0, y), min(canvas.shape[1], x + w), min(HEIGHT, y + h)
        if x0 < x1 and y0 < y1:
            part = canvas[y0:y1, x0:x1]
            np.maximum(part, (alpha[y0 - y : y1 - y, x0 - x : x1 - x] * ink).astype(np.uint8), out=part)

    def box(self, x, ticked):
        roll, capital = self.roll, self.capital
        side = int(capital * roll.uniform(0.75, 1.35))
        image = Image.new("L", (side * 2 + 8, side * 2 + 8), 0)
        pen, o = ImageDraw.Draw(image), side // 2 + 4
        thick = int(roll.integers(1, 4))
        pen.rectangle((o, o, o + side, o + side), outline=255, width=thick)
        if ticked:
            a, b, d = o + side * roll.uniform(-0.2, 0.25), o + side * roll.uniform(0.75, 1.2), roll.uniform(-0.1, 0.1) * side
            kind, w = roll.random(), int(roll.integers(2, 5))
            if kind < 0.55:
                pen.line((a, a + d, b, b), fill=255, width=w)
                pen.line((a, b, b, a - d), fill=255, width=w)
            elif kind < 0.85:
                pen.line((a, o + side * 0.5, o + side * 0.4, b, o + side * 1.2, o - side * roll.uniform(-0.1, 0.4)), fill=255, width=w)
            else:
                inset = max(1, int(side * roll.uniform(0, 0.25)))
                pen.rectangle((o + inset, o + inset, o + side - inset, o + side - inset), fill=255)
        self.lay(np.asarray(image), x - o + 2, self.base - capital / 2 - side / 2 - o + roll.normal(0, 0.06) * capital, 1)
        return x + side + capital * roll.uniform(0.3, 0.7)

    def sliver(self, x, text):
        """The end of a word before, cut by the strip's edge: no text. Answers where the line begins."""
        if text == "" or self.roll.random() >= 0.04:
            return x
        sign = SIGNS[1 + int(self.roll.integers(62))]
        if not self.face.has(sign):
            return x
        after = self.stamp(self.face, sign, 0)
        cut = int(after * self.roll.uniform(0.4, 0.75))
        self.canvas[:, : self.canvas.shape[1] - cut] = self.canvas[:, cut:].copy()
        return after - cut + self.capital * self.roll.uniform(0.6, 2.5)

    def stamped(self, width):
        """Rings and bars of a rubber stamp over the line, with less ink than most writing."""
        roll = self.roll
        image = Image.new("L", (width, HEIGHT), 0)
        pen, radius = ImageDraw.Draw(image), roll.uniform(60, 260)
        cx, cy = roll.uniform(-0.5 * radius, width + 0.5 * radius), roll.uniform(-radius, HEIGHT + radius)
        ink = int(roll.uniform(60, 190))
        for share in roll.uniform(0.5, 1, int(roll.integers(1, 4))):
            r = radius * share
            pen.arc((cx - r, cy - r, cx + r, cy + r), 0, 360, fill=ink, width=int(roll.integers(1, 7)))
        patchy = np.asarray(image) * (roll.random((HEIGHT, width)) < roll.uniform(0.6, 1))
        np.maximum(self.canvas, patchy.astype(np.uint8), out=self.canvas)

    def struck_words(self, text):
        out = [False] * len(text)
        if len(text) > 2 and self.texts.chance(0.025):
            starts = [0] + [at + 1 for at, sign in enumerate(text) if sign == " "]
            start = starts[int(self.roll.integers(len(starts)))]
            ends = [at for at, sign in enumerate(text) if sign == " " and at > start] + [len(text)]
            for at in range(start, ends[int(self.roll.integers(len(ends)))]):
                out[at] = text[at] not in "\0\1\2"
        return out

    def strike(self, struck, words_at, margin):
        roll, capital = self.roll, self.capital
        first, last = struck.index(True), len(struck) - 1 - struck[::-1].index(True)
        x0, x1 = (words_at[first - 1][1] if first else margin), words_at[last][1]
        if self.group in ("typed", "dots") and roll.random() < 0.5:
            sign = self.texts.pick("XXx/-#")
            for at in range(first, last + 1):
                self.stamp(self.face, sign, words_at[at - 1][1] if at else margin)
            return
        image = Image.new("L", (self.canvas.shape[1], HEIGHT), 0)
        pen = ImageDraw.Draw(image)
        for _ in range(int(roll.integers(1, 4))):
            y0, y1 = self.base - capital * roll.uniform(0.2, 0.75, 2)
            middle = ((x0 + x1) / 2, (y0 + y1) / 2 + roll.normal(0, 0.1) * capital)
            pen.line((x0 - roll.uniform(0, 4), y0, *middle, x1 + roll.uniform(0, 4), y1), fill=255, width=int(roll.integers(2, 5)))
        np.maximum(self.canvas, np.asarray(image), out=self.canvas)

    def surround(self, width):
        """Rules, edges of cells, and slivers of the lines above and below."""
        roll, chance, canvas, base, capital = self.roll, self.texts.chance, self.canvas, self.base, self.capital
        ink = int(roll.uniform(120, 256))
        if chance(0.22):
            y, thick = int(base + roll.uniform(0.02, 0.5) * capital), int(roll.integers(1, 4))
            a, b = (0, width) if chance(0.6) else sorted(roll.integers(0, width + 1, 2))
            canvas[max(0, y) : y + thick, a:b] = np.maximum(canvas[max(0, y) : y + thick, a:b], ink)
        for y in (int(32 - roll.uniform(15, 26)), int(32 + roll.uniform(15, 26))):
            if chance(0.16):
                canvas[y : y + int(roll.integers(1, 5)), :] = ink
        if chance(0.015):
            y = int(base - roll.uniform(0.1, 0.9) * capital)
            canvas[y : y + int(roll.integers(1, 3)), :] = ink
        for x in (int(roll.uniform(0, 5)), width - 1 - int(roll.uniform(0, 5))):
            if chance(0.1):
                canvas[:, x : x + int(roll.integers(1, 4))] = ink
        if chance(0.035):
            self.stamped(width)
        pitch = max(capital * roll.uniform(1.35, 2.1), 26)
        for way in (-1, 1):
            if chance(0.22):
                self.base, before = base + way * pitch, self.canvas
                self.canvas = np.zeros_like(before)
                x = roll.uniform(-20, 30)
                for sign in self.texts.value() * 3:
                    if x > width:
                        break
                    if sign in SIGNS and self.face.has(sign):
                        x = self.stamp(self.face, sign, x)
                # Never so far in that it would be a line of its own.
                keep = slice(0, max(0, int(base - capital * 1.12))) if way < 0 else slice(int(base + capital * 0.32), HEIGHT)
                before[keep] = np.maximum(before[keep], self.canvas[keep])
                self.canvas = before
        self.base = base


def leaning(alpha, roll):
    h, w = alpha.shape
    pad = 3
    image = Image.fromarray(alpha)
    turn, grow, shear = roll.normal(0, 0.05), np.clip(roll.normal(1, 0.08, 2), 0.75, 1.3), roll.normal(0, 0.08)
    cx, cy = w / 2, h / 2
    a, b, d, e = 1 / grow[0], shear - turn, turn, 1 / grow[1]
    out = image.transform(
        (w + 2 * pad, h + 2 * pad),
        Image.AFFINE,
        (a, b, cx - a * (cx + pad) - b * (cy + pad), d, e, cy - d * (cx + pad) - e * (cy + pad)),
        Image.BILINEAR,
    )
    return np.asarray(out)[pad:-pad, pad:-pad]
