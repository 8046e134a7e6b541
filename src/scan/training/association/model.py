"""A small transformer over the words of a page and their boxes: what each is part of, and what belongs together."""

import torch
import torch.nn.functional as F
from torch import nn

SPELLINGS, LOOKS, EDGES = 14, 12, 5
FIELDS, TOLD_OF, UNITS = 41, 22, 4
BUCKETS = 8192
WIDTH, HEADS, LAYERS, INNER = 256, 8, 6, 512
GROUPS = 2
PAIR = 64
PAIR_LOOKS = 12


def log_scaled(value):
    return torch.sign(value) * torch.log1p(value.abs())


def pair_looks(edges):
    """How two words lie to each other, in heights of the page's text: what a reader's eye goes by."""
    left, right, middle, row, order = edges.unbind(-1)

    def to(a, b):
        return a.unsqueeze(-1) - b.unsqueeze(-2)

    down = to(middle, middle)
    wide = torch.minimum((right - left).unsqueeze(-1), (right - left).unsqueeze(-2)).clamp_min(0.3)
    shared = (
        torch.minimum(right.unsqueeze(-1), right.unsqueeze(-2)) - torch.maximum(left.unsqueeze(-1), left.unsqueeze(-2))
    )
    apart = to(order, order)
    same_row = (to(row, row) == 0).to(down.dtype)
    return torch.stack(
        [
            log_scaled(down * 2) / 3,
            torch.exp(-down * down * 4),
            torch.exp(-(down - 1.5) * (down - 1.5)),
            same_row,
            log_scaled(to(left, left)) / 3,
            log_scaled(to(right, right)) / 3,
            log_scaled(to(left, right)) / 3,
            log_scaled(to(right, left)) / 3,
            torch.exp(-to(left, left) * to(left, left)),
            (shared / wide).clamp(-1, 1),
            (apart / 8).clamp(-1, 1),
            torch.exp(-((apart - 1) * (apart - 1))) - torch.exp(-((apart + 1) * (apart + 1))),
        ],
        -1,
    )


class Layer(nn.Module):
    def __init__(self):
        super().__init__()
        self.before = nn.LayerNorm(WIDTH)
        self.asked = nn.Linear(WIDTH, 3 * WIDTH)
        self.told = nn.Linear(WIDTH, WIDTH)
        self.after = nn.LayerNorm(WIDTH)
        self.inner = nn.Linear(WIDTH, INNER)
        self.outer = nn.Linear(INNER, WIDTH)

    def forward(self, x, bias):
        batch, count, _ = x.shape
        query, key, value = (
            self.asked(self.before(x)).view(batch, count, 3, HEADS, WIDTH // HEADS).permute(2, 0, 3, 1, 4).unbind(0)
        )
        if torch.onnx.is_in_onnx_export() or not x.is_cuda:
            scores = query @ key.transpose(-1, -2) * (WIDTH // HEADS) ** -0.5 + bias
            seen = torch.softmax(scores, -1) @ value
        else:
            seen = F.scaled_dot_product_attention(query, key, value, attn_mask=bias.to(query.dtype))
        x = x + self.told(seen.transpose(1, 2).reshape(batch, count, WIDTH))
        return x + self.outer(F.gelu(self.inner(self.after(x)), approximate="tanh"))


class Association(nn.Module):
    def __init__(self):
        super().__init__()
        self.spelled = nn.Embedding(BUCKETS, PAIR, padding_idx=0)
        self.looked = nn.Sequential(nn.Linear(PAIR + LOOKS, WIDTH), nn.GELU(approximate="tanh"), nn.Linear(WIDTH, WIDTH))
        self.near = nn.Sequential(nn.Linear(PAIR_LOOKS, 32), nn.ReLU(), nn.Linear(32, GROUPS * HEADS + 3))
        self.layers = nn.ModuleList(Layer() for _ in range(LAYERS))
        self.last = nn.LayerNorm(WIDTH)
        self.tags = nn.Linear(WIDTH, FIELDS + 1 + TOLD_OF + 1 + UNITS)
        self.pairs = nn.Linear(WIDTH, 6 * PAIR)
        nn.init.normal_(self.spelled.weight, std=0.3)
        with torch.no_grad():
            self.spelled.weight[0] = 0

    def forward(self, spellings, looks, edges, absent=None):
        """`absent`: which places of a batch hold no word. Answers tags [B,N,69] and pairs [B,3,N,N]."""
        some = (spellings > 0).to(looks.dtype).sum(-1, keepdim=True).clamp_min(1)
        spelled = self.spelled(spellings).sum(-2) / some.sqrt()
        x = self.looked(torch.cat([spelled.to(looks.dtype), looks], -1))
        near = self.near(pair_looks(edges)).permute(0, 3, 1, 2)
        if absent is not None:
            near = near.masked_fill(absent[:, None, None, :], -1e4)
        biases = [near[:, group * HEADS : (group + 1) * HEADS].contiguous() for group in range(GROUPS)]
        for nth, layer in enumerate(self.layers):
            x = layer(x, biases[nth * GROUPS // LAYERS])
        x = self.last(x)
        batch, count, _ = x.shape
        a, b = self.pairs(x).view(batch, count, 2, 3, PAIR).permute(2, 0, 3, 1, 4).unbind(0)
        pairs = a @ b.transpose(-1, -2) * PAIR**-0.5 + near[:, GROUPS * HEADS :]
        return self.tags(x), pairs
