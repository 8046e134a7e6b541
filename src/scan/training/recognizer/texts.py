"""What a line says: texts of the trade in the ways that public forms write them, words, and signs by chance."""

import string

from vocabulary import COMPONENTS, CORNERS, FEET, INCHES, KINDS, LABELS, MATERIALS, MONTHS, SENTENCES, SHORT, SOILS, STREETS, UNITS

# Signs of the answer, in the order of the network's classes; class 0 is "nothing here". The box signs stand for
# drawn boxes to tick, the shade for one sign that was struck out. Dashes and quotes of all kinds are the plain ones.
SIGNS = " " + string.digits + string.ascii_uppercase + string.ascii_lowercase + string.punctuation + "½¼¾°±" + "□☒▓"
EMPTY, TICKED, STRUCK = "□", "☒", "▓"


class Texts:
    def __init__(self, roll, words):
        self.roll, self.words = roll, words

    def pick(self, items):
        return items[int(self.roll.integers(len(items)))]

    def whole(self, low, high):
        return int(self.roll.integers(low, high + 1))

    def chance(self, share):
        return self.roll.random() < share

    def number(self):
        style, year = self.whole(0, 9), self.whole(1930, 2024)
        n, letters = self.whole(1, 10 ** self.whole(2, 5)), string.ascii_uppercase
        a, b = self.pick(letters), self.pick(letters)
        return (
            f"{year}-{n}",
            f"{n}",
            f"{year % 100:02d}-{n}",
            f"{a}{b}{year % 100:02d}{n:04d}",
            f"{a}-{n}",
            f"{a}{b}-{n:05d}",
            f"No. {n}",
            f"#{n}",
            f"{n}-{a}",
            f"{a}{n:05d}",
        )[style]

    def parcel(self):
        seps, parts = self.pick("--.-/ "), self.whole(2, 5)
        texts = [f"{self.whole(0, 10 ** w - 1):0{w}d}" for w in (self.whole(1, 4) for _ in range(parts))]
        if self.chance(0.15):
            texts[-1] += self.pick("ABCDLR")
        return seps.join(texts)

    def date(self):
        d, m, y = self.whole(1, 31), self.whole(1, 12), self.whole(1930, 2025)
        name, short = MONTHS[m - 1], self.pick(SHORT)
        return self.pick(
            [
                f"{m}/{d}/{y}",
                f"{m}/{d}/{y % 100:02d}",
                f"{m}-{d}-{y % 100:02d}",
                f"{m:02d}/{d:02d}/{y}",
                f"{m:02d}-{d:02d}-{y}",
                f"{y}-{m:02d}-{d:02d}",
                f"{name} {d}, {y}",
                f"{short} {d}, {y}",
                f"{short}. {d}, {y}",
                f"{d} {short} {y % 100:02d}",
                f"{m}.{d}.{y % 100:02d}",
                f"{name} {d}",
                f"{name}, {y}",
                f"{m} / {d} / {y % 100:02d}",
                f"{m}- {d} -{y}",
            ]
        )

    def part(self):
        return self.pick(["1/2", "1/4", "3/4", "½", "¼", "¾", "1/2", ".5"])

    def length(self):
        ft, inch = self.whole(1, self.pick([9, 60, 150])), self.whole(0, 11)
        f, i = self.pick(FEET), self.pick(INCHES)
        frac = (self.pick(["", " ", "-"]) + self.part()) if self.chance(0.15) else ""
        return (
            self.pick(
                [
                    f"{ft}{f}",
                    f"{ft}'-{inch}{frac}\"",
                    f"{ft}'-{inch}\"",
                    f"{ft}' {inch}\"",
                    f"{ft}'{inch}{frac}\"",
                    f"{inch}{i}",
                    f"{ft}.{self.whole(0, 9)}{f}",
                    f"{ft}{f}{'' if f[-1] == ' ' else ' '}{inch}{i}",
                    f"{ft} {self.part()}{f}",
                    f"{ft}",
                    f"{ft}-{inch}",
                    f"{ft}.{self.whole(0, 99):02d}",
                ]
            )
            .replace("  ", " ")
            .strip()
        )

    def gallons(self):
        n = self.whole(2, 40) * self.pick([25, 50, 100, 250])
        grouped = f"{n:,}" if self.chance(0.5) else f"{n}"
        return grouped + self.pick(["", " gal", " gal.", " GAL", " GAL.", " gals.", " gallons", " Gal. Tank", "gal", " gpd", " G.P.D."])

    def tie(self):
        a, b = self.pick("ABCDEFG"), self.pick("123456789ABC")
        length = self.length()
        return self.pick(
            [
                f"{a}-{b} {length}",
                f"{a}-{b}{length}",
                f"{a} to {b} {length}",
                f"{a}{b} = {length}",
                f"{a}: {length}",
                f"{a} - {length}",
                f"{a}-{b}: {length}",
                f"{a} to {self.pick(COMPONENTS)} {length}",
            ]
        )

    def size(self):
        x = self.pick([" x ", " X ", "x", " by ", "X"])
        return self.pick(
            [
                f"{self.length()}{x}{self.length()}",
                f"{self.length()}{x}{self.length()}{x}{self.length()}",
                f"{self.whole(1, 9)} - {self.length()}{x}{self.length()}",
                f"{self.whole(1, 9)}-{self.length()}{x}{self.length()}",
                f"{self.whole(1, 12)} @ {self.length()}",
                f"({self.whole(1, 9)}) {self.length()}",
                f"{self.whole(20, 2000)} sq. ft.",
                f"{self.whole(20, 2000)} sq ft",
                f"{self.whole(20, 900)} lin. ft.",
                f"{self.length()} dia.",
                f"{self.length()} L.D.",
                f"{self.length()} deep",
                f"{self.whole(1, 12)}{self.pick(INCHES)} pipe",
            ]
        )

    def rate(self):
        n = self.whole(1, 60)
        return self.pick(
            [
                f"{n}",
                f"{n} min/in",
                f"{n} min./inch",
                f"{n} MPI",
                f'1" in {n} min',
                f"{n} minutes",
                f"{n}.{self.whole(0, 9)}",
                f"{n}%",
                f"${n}.{self.whole(0, 99):02d}",
                f"${n}.00",
                f"{n}°",
                f"N {n}° {self.whole(0, 59)}' E",
                f"± {n}",
                f"{n} +/-",
                f">{n}",
                f"> {n}0",
                f"<{n}",
                f"{n}/{self.whole(1, 60)}",
                f"({n})",
            ]
        )

    def phone(self):
        return f"{self.pick(['', '(555) ', '555-', '1-555-'])}555-{self.whole(0, 9999):04d}"

    def word(self):
        return self.pick(self.words)

    def address(self):
        name = " ".join(self.word().capitalize() for _ in range(self.whole(1, 2)))
        text = f"{self.whole(1, 9999)} {name} {self.pick(STREETS)}"
        return text + self.pick(["", "", ".", f", Lot {self.whole(1, 99)}", f" #{self.whole(1, 40)}"])

    def short(self):
        return self.pick(
            [
                self.pick(MATERIALS),
                self.pick(SOILS),
                self.pick(KINDS),
                self.pick(COMPONENTS),
                f"{self.pick(CORNERS)} corner of house",
                f"{self.pick(MATERIALS)} {self.pick(COMPONENTS)}",
                str(self.whole(0, 12)),
            ]
        )

    def value(self):
        makers = [
            self.number,
            self.parcel,
            self.date,
            self.length,
            self.length,
            self.gallons,
            self.tie,
            self.size,
            self.rate,
            self.address,
            self.short,
            self.short,
            self.phone,
            lambda: str(self.whole(0, 99)),
            self.length,
            self.gallons,
        ]
        return self.pick(makers)()

    def blank(self):
        """Leaders and rules to write on: nothing of them is text."""
        return self.pick([".", ".", ". ", "_", "_", "-", "…"]) * self.whole(*self.pick([(4, 18), (4, 18), (12, 50)]))

    def label(self):
        text = self.pick(LABELS)
        if self.chance(0.3):
            text = self.joined([self.pick([self.word, self.word, lambda: self.pick(COMPONENTS), lambda: self.pick(LABELS).lower()])()
                for _ in range(self.whole(1, 3))], [" ", " ", " ", ": ", ", ", "-", " of ", " & "])  # fmt: skip
            text = text[:1].upper() + text[1:]
        if self.chance(0.15):
            text += self.pick([" (", " (", "(", " ["]) + self.pick(UNITS)
            text += "]" if "[" in text else ")"
        return text + self.pick([":", ":", "", "", "", "", "", ".", " -", " :"])

    def joined(self, parts, signs):
        text = parts[0]
        for part in parts[1:]:
            text += self.pick(signs) + part
        return text

    def phrase(self):
        """Running notes: values and words between commas, dashes, brackets and signs of equality."""
        makers = [self.value, self.value, self.word, self.word, self.short, self.label, lambda: self.pick("ABCDEFG")]
        parts = [self.pick(makers)() for _ in range(self.whole(2, 5))]
        text = self.joined(parts, [", ", ", ", ", ", ", ", ",", ": ", "; ", ". ", " = ", " = ", " - ", " (", ") ", "/", " / ", " & ", "-", " @ "])
        start = self.pick(["", "", "", "", "", "- ", "-", "* ", "1. ", "(a) "])
        return (start + text + self.pick(["", "", ".", ",", ")", ";"]))[:64]

    def row(self):
        """Cells of a register that were found as one line."""
        return ("" if self.chance(0.05) else " ").join(
            self.pick([self.value, self.value, self.word, lambda: '"'])() + " " * self.whole(1, 8) for _ in range(self.whole(2, 4))
        ).strip()

    def tick(self):
        mark = self.pick(
            ["[X] ", "[ ] ", "[x] ", "( ) ", "(X) ", "(x) ", "\0", "\0", "\1", "\1", "X ", "__X__ ", "[X]", "[ ]", "\1 ", "\0 "]
        )
        word = self.pick([self.pick(KINDS), self.pick(MATERIALS), self.pick(COMPONENTS), self.pick(LABELS)])
        return mark + word if self.chance(0.7) else word + " " + mark.strip(" ")

    def sentence(self):
        if self.chance(0.4):
            return " ".join(self.word() for _ in range(self.whole(2, 11))).capitalize() + self.pick(["", "."])
        text = self.pick(SENTENCES)
        for key, make in (("{len}", self.length), ("{gal}", self.gallons), ("{date}", self.date), ("{num}", self.number)):
            while key in text:
                text = text.replace(key, make(), 1)
        text = text.replace("{mat}", self.pick(MATERIALS)).replace("{n}", str(self.whole(1, 9))).replace("{A}", self.pick("ABCD"))
        text = text.replace("{inch}", f'{self.whole(4, 48)}"').replace("{dir}", self.pick(["north", "south", "east", "west", "rear"]))
        text = text.replace("{corner}", self.pick(CORNERS))
        words = text.split(" ")
        start = self.whole(0, max(0, len(words) - 3)) if self.chance(0.3) else 0
        return " ".join(words[start : start + self.whole(3, 14)])

    def chances(self):
        letters = self.pick(
            [
                string.digits,
                string.digits,
                string.ascii_uppercase + string.digits,
                string.ascii_letters + string.digits,
                string.digits + "-/.'\" ",
                string.ascii_letters + string.digits + string.punctuation + "½¼¾°±",
            ]
        )
        return "".join(self.pick(letters) for _ in range(self.whole(1, 14))).strip() or "0"

    def line(self):
        """One line. \\0 and \\1 stand for a drawn box, empty and ticked; \\2 for leaders, which are drawn and not read."""
        kind = self.roll.random()
        if kind < 0.02:
            return ""
        if kind < 0.37:
            text = self.value()
        elif kind < 0.46:
            text = self.label()
        elif kind < 0.60:
            gap = self.pick([" ", " ", "  ", "   ", "\2", "\2", " \2", " \2 "])
            text = self.label() + gap + self.value() + (self.pick(["", "  ", "\2"]) if self.chance(0.2) else "")
            if self.chance(0.2):
                text += "  " + self.label() + self.pick([" ", "\2"]) + self.value()
        elif kind < 0.69:
            text = "  ".join(self.tick() for _ in range(self.whole(1, 4)))
        elif kind < 0.76:
            text = self.sentence()
        elif kind < 0.84:
            text = self.phrase()
        elif kind < 0.87:
            text = self.row()
        elif kind < 0.95:
            text = self.chances()
        else:
            text = " ".join(self.word() for _ in range(self.whole(1, 3)))
        case = self.roll.random()
        if case < 0.38:
            text = text.upper()
        elif case < 0.5:
            text = text.title()
        return text.replace("′", "'").replace("″", '"')
