"""One process that draws batches of lines for ever and writes them to its standard output, each as a pickle after its length
in eight bytes. A process of its own, not a fork, and a pipe, not shared memory: neither a lock held at the fork nor a small
shared memory can stop it.

python3 feed.py FONTS WORDS HERSHEY SEED SHARE
"""

import collections
import pickle
import struct
import sys

import numpy as np

from draw import Pen
from texts import SIGNS

WIDTHS = (96, 160, 256, 384, 512, 768, 1024, 1536)
COLUMNS = 131_072
MOST_LINES = 640
CODES = {sign: at + 1 for at, sign in enumerate(SIGNS)}


def words_of(path):
    words = (line.strip() for line in open(path, encoding="utf-8"))
    return [word for word in words if word.isascii() and word.isalpha() and word.islower() and 2 <= len(word) <= 9]


def batch(lines, width):
    """(pictures, signs of all labels in a row, their numbers, heights of capitals, 1 where a dot head may have written)"""
    pictures = np.zeros((len(lines), 64, width), np.uint8)
    for at, (picture, *_) in enumerate(lines):
        pictures[at, :, : picture.shape[1]] = picture
    codes = [[CODES[sign] for sign in label] for _, label, *_ in lines]
    return (
        pictures,
        np.array([code for row in codes for code in row], np.int64),
        np.array([len(row) for row in codes], np.int64),
        np.array([line[2] for line in lines], np.float32),
        np.array([line[3] in ("typed", "dots") for line in lines], np.float32),
    )


def main(fonts, words, hershey, seed, share):
    pen = Pen(fonts, int(seed), words_of(words), hershey=hershey)
    waiting = collections.defaultdict(list)
    while True:
        line = pen.line()
        width = next((width for width in WIDTHS if line[0].shape[1] <= width), None)
        if width is None or line[1] == "" and pen.roll.random() < 0.5:
            continue
        waiting[width].append(line)
        if len(waiting[width]) >= max(1, int(min(MOST_LINES, COLUMNS // width) * float(share))):
            told = pickle.dumps(batch(waiting.pop(width), width), protocol=5)
            sys.stdout.buffer.write(struct.pack("<Q", len(told)) + told)
            sys.stdout.buffer.flush()


if __name__ == "__main__":
    main(*sys.argv[1:])
