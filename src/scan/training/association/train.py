"""Trains the association on pages that make-shards.ts draws: python3 train.py --shards DIR --out DIR --total 420 --part 420."""

import argparse
import json
import math
import os
import queue
import threading
import time

import numpy as np
import torch
import torch.nn.functional as F

from model import EDGES, FIELDS, LOOKS, SPELLINGS, TOLD_OF, UNITS, Association

SIZES = [(96, 448), (160, 288), (256, 144), (384, 72), (512, 40), (640, 24)]
COVERED = 0.06
TARGETS = [("field", np.uint8), ("begins", np.uint8), ("of", np.uint8), ("existing", np.uint8), ("unit", np.uint8),
           ("permit", np.int16), ("component", np.int16), ("label", np.int16)]


def read_shard(path):
    data = np.fromfile(path, np.uint8)
    count = int(data[:4].view(np.uint32)[0])
    at = 4
    lengths = data[at : at + 2 * count].view(np.uint16).astype(np.int64)
    at += 2 * count
    total = int(lengths.sum())

    def take(kind, wide):
        nonlocal at
        size = np.dtype(kind).itemsize * total * wide
        part = np.frombuffer(data[at : at + size].tobytes(), kind)
        at += size
        return part.reshape(total, wide) if wide > 1 else part

    columns = {"spellings": take(np.uint16, SPELLINGS), "looks": take(np.float32, LOOKS), "edges": take(np.float32, EDGES)}
    for name, kind in TARGETS:
        columns[name] = take(kind, 1)
    begin = 0
    for length in lengths:
        yield {name: column[begin : begin + length] for name, column in columns.items()}
        begin += length


def batch_of(pages, size):
    batch = {"spellings": np.zeros((len(pages), size, SPELLINGS), np.int32),
             "looks": np.zeros((len(pages), size, LOOKS), np.float32),
             "edges": np.zeros((len(pages), size, EDGES), np.float32),
             "absent": np.ones((len(pages), size), bool)}
    for name, _ in TARGETS:
        batch[name] = np.full((len(pages), size), -1, np.int64)
    for nth, page in enumerate(pages):
        count = len(page["field"])
        for name, column in page.items():
            batch[name][nth, :count] = column
        batch["absent"][nth, :count] = False
    return {name: torch.from_numpy(column) for name, column in batch.items()}


class Batches:
    """Batches of pages of about one length, shard after shard in order; shards are waited for and taken away."""

    def __init__(self, folder, first, shrink, keep=False):
        self.folder, self.shard, self.shrink, self.keep = folder, first, shrink, keep
        self.ready = queue.Queue(24)
        self.stopped = False
        threading.Thread(target=self.fill, daemon=True).start()

    def fill(self):
        waiting = {size: [] for size, _ in SIZES}
        while not self.stopped:
            path = os.path.join(self.folder, f"{self.shard}.shard")
            if not os.path.exists(path):
                time.sleep(0.02)
                continue
            for page in read_shard(path):
                size, most = next((size, most) for size, most in SIZES if len(page["field"]) <= size)
                waiting[size].append(page)
                if len(waiting[size]) >= max(1, most // self.shrink):
                    self.ready.put((self.shard, batch_of(waiting[size], size)))
                    waiting[size] = []
            if not self.keep:
                os.remove(path)
            self.shard += 1


def losses(tags, pairs, batch):
    tags = tags.float()
    field, begins, of, existing, unit = tags.split([FIELDS, 1, TOLD_OF, 1, UNITS], -1)
    there = ~batch["absent"]
    value = there & (batch["field"] > 0)
    first = value & (batch["begins"] == 1)
    part = value & (batch["component"] >= 0)

    def mean(loss, where):
        return (loss * where).sum() / where.sum().clamp_min(1)

    def class_loss(logits, target, where):
        loss = F.cross_entropy(logits.flatten(0, 1), target.clamp_min(0).flatten(), reduction="none")
        return mean(loss.view(target.shape), where)

    def yes_no(logits, target, where):
        return mean(F.binary_cross_entropy_with_logits(logits.float(), target.float(), reduction="none"), where)

    def same(logits, target, where):
        both = where.unsqueeze(-1) & where.unsqueeze(-2)
        both &= ~torch.eye(both.shape[-1], dtype=torch.bool, device=both.device)
        equal = target.unsqueeze(-1) == target.unsqueeze(-2)
        loss = F.binary_cross_entropy_with_logits(logits.float(), equal.float(), reduction="none") * both
        # By page, so that a register does not outweigh all others.
        return (loss.sum((1, 2)) / both.sum((1, 2)).clamp_min(1)).mean()

    label = pairs[:, 2].float().masked_fill(batch["absent"][:, None, :], -1e4)
    return {
        "field": class_loss(field, batch["field"], there),
        "begins": 0.4 * yes_no(begins.squeeze(-1), batch["begins"] == 1, value),
        "of": 0.6 * class_loss(of, batch["of"], value),
        "existing": 0.4 * yes_no(existing.squeeze(-1), batch["existing"] == 1, part),
        "unit": 0.3 * class_loss(unit, batch["unit"], value),
        "permit": 0.5 * same(pairs[:, 0], batch["permit"], first & (batch["permit"] >= 0)),
        "component": 0.4 * same(pairs[:, 1], batch["component"], first & part),
        "label": 0.25 * class_loss(label, batch["label"], first),
    }


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--shards", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--total", type=float, default=420)
    parser.add_argument("--part", type=float, default=420)
    parser.add_argument("--rate", type=float, default=1.6e-3)
    parser.add_argument("--resume")
    parser.add_argument("--start", help="weights of an earlier training to go on from")
    parser.add_argument("--shrink", type=int, default=1)
    parser.add_argument("--first", type=int, default=0)
    options = parser.parse_args()
    torch.manual_seed(7)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.backends.cuda.matmul.allow_tf32 = True
    model = Association().to(device)
    if options.start:
        model.load_state_dict({name: value.float() for name, value in torch.load(options.start, map_location=device).items()})
    average = {name: value.detach().clone() for name, value in model.state_dict().items()}
    optimizer = torch.optim.AdamW(model.parameters(), lr=options.rate, weight_decay=0.02, betas=(0.9, 0.98), fused=device == "cuda")
    spent, step, pages, first = 0.0, 0, 0, options.first
    if options.resume:
        kept = torch.load(options.resume, map_location=device)
        model.load_state_dict(kept["model"])
        optimizer.load_state_dict(kept["optimizer"])
        average, spent, step, pages, first = kept["average"], kept["spent"], kept["step"], kept["pages"], kept["shard"] + 1
    batches = Batches(options.shards, first, options.shrink)
    begun = time.time()
    told = {}
    shard = first
    while time.time() - begun < options.part:
        share = (spent + time.time() - begun) / options.total
        rate = options.rate * min(1, (step + 1) / 300) * (0.02 + 0.98 * 0.5 * (1 + math.cos(math.pi * min(1, share))))
        for group in optimizer.param_groups:
            group["lr"] = rate
        shard, batch = batches.ready.get()
        batch = {name: column.to(device, non_blocking=True) for name, column in batch.items()}
        # Some words are covered, so that labels nobody has seen are told by what stands around them.
        covered = torch.rand(batch["absent"].shape, device=device) < COVERED
        batch["spellings"] = batch["spellings"].masked_fill(covered.unsqueeze(-1), 0)
        with torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
            tags, pairs = model(batch["spellings"], batch["looks"], batch["edges"], batch["absent"])
        parts = losses(tags, pairs, batch)
        loss = sum(parts.values())
        optimizer.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(model.parameters(), 1.0)
        optimizer.step()
        step += 1
        pages += len(batch["field"])
        decay = min(0.998, (step + 1) / (step + 10))
        with torch.no_grad():
            state = model.state_dict()
            torch._foreach_lerp_([average[name] for name in state], [state[name] for name in state], 1 - decay)
        if step % 20 == 0:
            for name, value in parts.items():
                told[name] = 0.8 * told.get(name, value.item()) + 0.2 * value.item()
        if step % 200 == 0 or step in (20, 60):
            line = {name: round(value, 4) for name, value in told.items()}
            print(f"{spent + time.time() - begun:.0f} s, step {step}, {pages} pages, shard {shard}, queue {batches.ready.qsize()}, {line}", flush=True)
    batches.stopped = True
    spent += time.time() - begun
    os.makedirs(options.out, exist_ok=True)
    torch.save({name: value.half().cpu() for name, value in average.items()}, os.path.join(options.out, "weights.pt"))
    torch.save({"model": {name: value for name, value in model.state_dict().items()}, "average": average,
                "optimizer": optimizer.state_dict(), "spent": spent, "step": step, "pages": pages, "shard": shard},
               os.path.join(options.shards, "resume.pt"))
    with open(os.path.join(options.out, "training.json"), "w") as file:
        json.dump({"seconds": round(spent), "steps": step, "pages": pages, "lastShard": shard, "rate": options.rate,
                   "device": torch.cuda.get_device_name() if device == "cuda" else "cpu", "losses": told}, file, indent=2)
    print(f"{step} steps, {pages} pages, {spent:.0f} s", flush=True)


if __name__ == "__main__":
    main()
    os._exit(0)
