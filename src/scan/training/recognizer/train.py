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
import pickle
import queue
import struct
import subprocess
import sys
import threading
import time

import numpy as np
import torch
import torch.nn.functional as F

from damage import Dice, damaged
from draw import Pen
from feed import batch, words_of
from network import Recognizer, read


def tensors(arrays):
    return tuple(torch.from_numpy(array) for array in arrays)


def fed(options, at, drawn, device):
    """Takes what one drawing process writes, for ever."""
    here = pathlib.Path(__file__).parent
    seed = options.seed + int(getattr(options, "from")) + 1000 * (at + 1)
    asked = [options.fonts, options.words, options.hershey, str(seed), str(options.share)]
    pipe = subprocess.Popen([sys.executable, str(here / "feed.py"), *asked], stdout=subprocess.PIPE, bufsize=1 << 22).stdout
    while True:
        size = pipe.read(8)
        if len(size) < 8:
            print(f"drawing process {at} has ended", flush=True)
            return
        part = tensors(pickle.loads(pipe.read(struct.unpack("<Q", size)[0])))
        drawn.put([it.to(device) if place in (0, 1, 3, 4) else it for place, it in enumerate(part)])


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
    return {group: (tensors(batch(lines, 512)), [line[1] for line in lines]) for group, lines in sets.items()}


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
        ("stuck", float, 3.0),
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

    # Bounded, so that drawing never runs ahead of training by more than the memory holds.
    drawn, pool = queue.Queue(48), []
    for at in range(options.workers):
        threading.Thread(target=fed, args=(options, at, drawn, device), daemon=True).start()

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
    late, spent = [], []

    def now():
        """The clock, with all that was asked of the device done; asked on a few steps only."""
        if not 300 <= steps < 330 or device != "cuda":
            return 0.0
        torch.cuda.synchronize()
        return time.time()

    while time.time() - start < options.seconds:
        try:
            part = drawn.get(block=False)
            fresh += len(part[0])
            pool.append(part)
            # The first sign of all is found on short lines.
            if begun == 0 and not options.start and time.time() - start < options.short and part[0].shape[2] > 256:
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
        clock = [now()]
        with torch.no_grad():
            seen = damaged(pictures, capital, typed, dice, worst=1.0 if options.start else min(1.0, 0.25 + 6 * done))
        clock.append(now())
        with torch.autocast(device, dtype=torch.bfloat16, enabled=device == "cuda"):
            logits = model(seen)
        chances = F.log_softmax(logits.float(), 2).transpose(0, 1)
        steps_of = torch.full((len(pictures),), chances.shape[0], dtype=torch.int64)
        loss = F.ctc_loss(chances, labels, steps_of, lengths, reduction="sum", zero_infinity=True) / lengths.sum().clamp_min(1)
        clock.append(now())
        descent.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(model.parameters(), 1.0)
        descent.step()
        clock.append(now())
        if clock[0]:
            spent.append(np.diff(clock))
        steps, lines = steps + 1, lines + len(pictures)
        keep = min(options.keep, 1 - 8 / (8 + steps + 20 * begun))
        if steps % 4 == 0:
            # Counters of the batches seen are whole numbers and are taken over as they are.
            with torch.no_grad():
                state = [(average[name], value) for name, value in model.state_dict().items()]
                torch._foreach_mul_([a for a, _ in state], keep)
                torch._foreach_add_([a for a, _ in state], [value.float() for _, value in state], alpha=1 - keep)
        if steps == 330 and spent:
            ms = np.median(np.array(spent), 0) * 1000
            print(f"ms a step: damage {ms[0]:.1f}, network and loss {ms[1]:.1f}, back and descent {ms[2]:.1f}", flush=True)
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
            and 90 < time.time() - start < 91
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
