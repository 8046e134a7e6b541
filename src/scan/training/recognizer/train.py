"""Trains the recognizer from nothing on lines that are drawn meanwhile, and stops by the clock; goes on where a part of it
stopped.

python3 train.py --fonts FOLDER/cut --words FILE --hershey FILE --out FOLDER [--seconds 500] [--from 0 --of 500]
    [--part FOLDER] [--resume FOLDER]
"""

import argparse
import collections
import math
import os
import pathlib
import queue
import threading
import time

import numpy as np
import torch
import torch.nn.functional as F
from torch.utils.data import DataLoader, IterableDataset, get_worker_info

from damage import Dice, damaged
from draw import Pen
from network import Recognizer, read
from texts import SIGNS

WIDTHS = (96, 160, 256, 384, 512, 768, 1024, 1536)
COLUMNS = 98_304
MOST_LINES = 512
CODES = {sign: at + 1 for at, sign in enumerate(SIGNS)}


def words_of(path):
    words = (line.strip() for line in open(path, encoding="utf-8"))
    return [word for word in words if word.isascii() and word.isalpha() and word.islower() and 2 <= len(word) <= 9]


class Lines(IterableDataset):
    """Batches of lines of one width each, for ever."""

    def __init__(self, options, seed, share=1.0):
        self.options, self.seed, self.share = options, seed, share

    def __iter__(self):
        worker = get_worker_info()
        torch.set_num_threads(1)
        pen = Pen(self.options.fonts, [self.seed, worker.id if worker else 0], words_of(self.options.words), hershey=self.options.hershey)
        waiting = collections.defaultdict(list)
        while True:
            line = pen.line()
            width = next((width for width in WIDTHS if line[0].shape[1] <= width), None)
            if width is None or line[1] == "" and pen.roll.random() < 0.5:
                continue
            waiting[width].append(line)
            if len(waiting[width]) >= max(1, int(min(MOST_LINES, COLUMNS // width) * self.share)):
                yield batch(waiting.pop(width), width)


def batch(lines, width):
    pictures = np.zeros((len(lines), 64, width), np.uint8)
    for at, (picture, *_) in enumerate(lines):
        pictures[at, :, : picture.shape[1]] = picture
    codes = [[CODES[sign] for sign in label] for _, label, *_ in lines]
    return (
        torch.from_numpy(pictures),
        torch.tensor([code for row in codes for code in row], dtype=torch.int64),
        torch.tensor([len(row) for row in codes], dtype=torch.int64),
        torch.tensor([float(line[2]) for line in lines]),
        torch.tensor([float(line[3] in ("typed", "dots")) for line in lines]),
    )


def distance(a, b):
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        before, row[0] = row[0], i
        for j, y in enumerate(b, 1):
            before, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, before + (x != y))
    return row[-1]


def held_out(options, device):
    """Lines in fonts that are never trained, kept for the whole run."""
    pen = Pen(options.fonts, 990_001, words_of(options.words), held_out=True)
    sets = collections.defaultdict(list)
    while sum(map(len, sets.values())) < options.held:
        line = pen.line()
        if line[0].shape[1] <= 512 and line[1]:
            sets[line[3]].append(line)
    return {group: (batch(lines, 512), [line[1] for line in lines]) for group, lines in sets.items()}


def score(model, sets, device):
    model.eval()
    told = []
    with torch.no_grad():
        for group, ((pictures, _, _, capital, typed), labels) in sets.items():
            said = []
            for at in range(0, len(labels), 128):
                part = slice(at, at + 128)
                dice = Dice(7 + at, device)
                said += read(model(damaged(pictures[part].to(device), capital[part].to(device), typed[part].to(device), dice)).float())
            wrong = sum(distance(a, b) for a, b in zip(said, labels))
            whole = sum(a == b for a, b in zip(said, labels))
            told.append(f"{group} {100 - 100 * wrong / sum(map(len, labels)):.1f}/{100 * whole / len(labels):.1f}")
    model.train()
    return "  ".join(told)


def main():
    ask = argparse.ArgumentParser()
    for name, kind, given in (
        ("fonts", str, None),
        ("words", str, None),
        ("hershey", str, None),
        ("out", str, None),
        ("seconds", float, 500),
        ("from", float, 0),
        ("of", float, None),
        ("resume", str, None),
        ("workers", int, 15),
        ("peak", float, 1.6e-3),
        ("held", int, 1600),
        ("seed", int, 20261130),
        ("share", float, 1.0),
        ("every", float, 90),
        ("short", float, 8),
        ("stuck", float, 3.4),
        ("start", str, None),
        ("part", str, None),
        ("slow", int, 0),
        ("keep", float, 0.995),
    ):
        ask.add_argument(f"--{name}", type=kind, default=given)
    options = ask.parse_args()
    begun, whole = getattr(options, "from"), options.of or getattr(options, "from") + options.seconds
    out = pathlib.Path(options.out)
    out.mkdir(parents=True, exist_ok=True)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(options.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True

    drawn, pool = queue.Queue(), []
    loader = DataLoader(
        Lines(options, options.seed + int(begun), options.share),
        batch_size=None,
        num_workers=options.workers,
        prefetch_factor=3 if options.workers else None,
        pin_memory=device == "cuda",
    )

    # The drawing processes are forked before anything else runs here: one forked beside a busy thread can wait for ever
    # for a lock that nobody holds, and all others then wait for its turn.
    stream = iter(loader)

    def fetch():
        for part in stream:
            drawn.put([it.to(device, non_blocking=True) if at in (0, 3, 4) else it for at, it in enumerate(part)])

    threading.Thread(target=fetch, daemon=True).start()

    model = Recognizer().to(device, memory_format=torch.channels_last)
    decayed = [p for p in model.parameters() if p.ndim > 1]
    plain = [p for p in model.parameters() if p.ndim <= 1]
    descent = torch.optim.AdamW(
        [{"params": decayed, "weight_decay": 0.03}, {"params": plain, "weight_decay": 0.0}],
        lr=1e-4,
        betas=(0.9, 0.98),
        **({"fused": True} if device == "cuda" else {}),
    )
    if options.resume:
        kept = torch.load(pathlib.Path(options.resume, "part.pt"), map_location=device)
        model.load_state_dict(kept["model"])
        descent.load_state_dict(kept["descent"])
    if options.start:
        kept = torch.load(options.start, map_location=device)
        model.load_state_dict({name: value.to(model.state_dict()[name].dtype) for name, value in kept.items()})
    average = {name: value.detach().clone().float() for name, value in model.state_dict().items()}
    if options.resume:
        average = {name: value.to(device).float() for name, value in kept["average"].items()}
    dice, roll = Dice(options.seed + int(begun) + 1, device), np.random.default_rng(options.seed + int(begun))
    sets = held_out(options, device)
    shown = Recognizer().to(device)

    def averaged():
        shown.load_state_dict({name: value.to(model.state_dict()[name].dtype) for name, value in average.items()})
        return shown

    pool.append(drawn.get())
    start, steps, lines, fresh, losses, told = time.time(), 0, 0, len(pool[0][0]), [], time.time()
    late = []
    while time.time() - start < options.seconds:
        try:
            part = drawn.get(block=False)
            fresh += len(part[0])
            pool.append(part)
            # The first sign of all is found on short lines.
            if begun == 0 and time.time() - start < options.short and part[0].shape[2] > 256:
                late.append(pool.pop())
                continue
            if len(pool) > 5000:
                pool[int(roll.integers(len(pool) - 1))] = pool.pop()
        except queue.Empty:
            if late and time.time() - start >= options.short:
                pool, late = pool + late, []
            part = pool[int(roll.integers(len(pool)))]
        pictures, labels, lengths, capital, typed = part
        done = (begun + time.time() - start) / whole
        rate = (
            options.peak * (min(1, done / 0.04) if done < 0.04 else 0.5 * (1 + math.cos(math.pi * min(1, (done - 0.04) / 0.96)))) + 2e-6
        )
        for group in descent.param_groups:
            group["lr"] = rate
        with torch.no_grad():
            seen = damaged(pictures, capital, typed, dice, worst=min(1.0, 0.25 + 6 * done))
        with torch.autocast(device, dtype=torch.bfloat16, enabled=device == "cuda"):
            logits = model(seen)
        chances = F.log_softmax(logits.float(), 2).transpose(0, 1)
        steps_of = torch.full((len(pictures),), chances.shape[0], dtype=torch.int64)
        loss = F.ctc_loss(chances, labels.to(device), steps_of, lengths, reduction="sum", zero_infinity=True) / lengths.sum().clamp_min(1)
        descent.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(model.parameters(), 1.0)
        descent.step()
        steps, lines = steps + 1, lines + len(pictures)
        keep = min(options.keep, 1 - 8 / (8 + steps + 20 * begun))
        if steps % 4 == 0:
            # Counters of the batches seen are whole numbers and are taken over as they are.
            with torch.no_grad():
                state = [(average[name], value) for name, value in model.state_dict().items()]
                torch._foreach_mul_([a for a, _ in state], keep)
                torch._foreach_add_([a for a, _ in state], [value.float() for _, value in state], alpha=1 - keep)
        if steps % 25 == 0:
            losses.append(loss.item())
            if steps % (400 if device == "cuda" else 25) == 0:
                print(
                    f"{begun + time.time() - start:.0f} s  {steps} steps  {lines} lines  {fresh} fresh  loss {np.mean(losses[-8:]):.3f}",
                    flush=True,
                )
        if time.time() - start > 20 and fresh < 0.2 * lines and not options.slow:
            print(f"{fresh} fresh of {lines} lines: the drawing has stopped", flush=True)
            os._exit(1)
        if (
            not options.resume
            and not options.start
            and steps > 100
            and 30 < time.time() - start < 31
            and np.mean(losses[-4:]) > options.stuck
        ):
            print(f"stuck at {losses[-8:]}: stopped", flush=True)
            os._exit(1)
        if time.time() - told > options.every:
            told = time.time()
            print(
                f"{begun + told - start:.0f} s  {steps} steps  {lines} lines  {fresh} fresh  "
                f"loss {np.mean(losses[-10:] or [loss.item()]):.4f}  "
                f"{score(averaged(), sets, device)}",
                flush=True,
            )
            torch.save({name: value.half() for name, value in average.items()}, out / "recognizer.pt")
    print(f"end  {steps} steps  {lines} lines  {fresh} fresh  {score(averaged(), sets, device)}", flush=True)
    torch.save({name: value.half() for name, value in average.items()}, out / "recognizer.pt")
    part = pathlib.Path(options.part or out, "part.pt")
    torch.save({"model": model.state_dict(), "descent": descent.state_dict(), "average": average}, part)
    os._exit(0)


if __name__ == "__main__":
    main()
