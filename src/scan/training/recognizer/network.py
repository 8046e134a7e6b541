"""The network: convolutions to a height of one, attention and depthwise convolution along the line, two steps of the answer
for each eight points of width."""

import torch
import torch.nn.functional as F
from torch import nn

from texts import SIGNS

CLASSES = 1 + len(SIGNS)


def conv(a, b, stride=1, kernel=3):
    return nn.Sequential(nn.Conv2d(a, b, kernel, stride, kernel // 2, bias=False), nn.BatchNorm2d(b))


class Residual(nn.Module):
    def __init__(self, width):
        super().__init__()
        self.first, self.second = conv(width, width), conv(width, width)

    def forward(self, x):
        return F.relu(x + self.second(F.relu(self.first(x))))


class Layer(nn.Module):
    """Attention over the line, then neighbours by a depthwise convolution, then each step by itself."""

    def __init__(self, width, heads, reach):
        super().__init__()
        self.heads = heads
        self.before = nn.ModuleList(nn.LayerNorm(width) for _ in range(3))
        self.ask, self.tell = nn.Linear(width, 3 * width), nn.Linear(width, width)
        self.near = nn.Conv1d(width, width, reach, padding=reach // 2, groups=width)
        self.mix = nn.Linear(width, width)
        self.out, self.back = nn.Linear(width, 3 * width), nn.Linear(3 * width, width)
        self.drop = nn.Dropout(0.02)

    def forward(self, x):
        n, steps, width = x.shape
        q, k, v = self.ask(self.before[0](x)).view(n, steps, 3, self.heads, width // self.heads).permute(2, 0, 3, 1, 4).unbind(0)
        weight = torch.softmax(q @ k.transpose(2, 3) * (width // self.heads) ** -0.5, -1)
        x = x + self.drop(self.tell((weight @ v).transpose(1, 2).reshape(n, steps, width)))
        x = x + self.drop(self.mix(F.silu(self.near(self.before[1](x).transpose(1, 2)).transpose(1, 2))))
        return x + self.drop(self.back(F.silu(self.out(self.before[2](x)))))


class Recognizer(nn.Module):
    def __init__(self, width=256, layers=5, heads=4):
        super().__init__()
        self.eye = nn.Sequential(
            conv(1, 32, 2),
            nn.ReLU(),
            conv(32, 64, 2),
            nn.ReLU(),
            Residual(64),
            Residual(64),
            Residual(64),
            conv(64, 128, 2),
            nn.ReLU(),
            Residual(128),
            Residual(128),
            Residual(128),
            conv(128, 192, (2, 1)),
            nn.ReLU(),
            Residual(192),
            Residual(192),
        )
        self.flat = nn.Conv2d(192, width, (3, 1))
        self.norm = nn.LayerNorm(width)
        self.layers = nn.ModuleList(Layer(width, heads, 9) for _ in range(layers))
        self.last = nn.LayerNorm(width)
        self.says = nn.Linear(width, 2 * CLASSES)

    def evened(self, picture):
        """Ink against paper in deviations of the line's own gray, so that faded lines look like others."""
        middle = picture.mean((1, 2, 3), keepdim=True)
        apart = picture - middle
        apart = -apart / ((apart * apart).mean((1, 2, 3), keepdim=True) + 4e-4).sqrt()
        if self.training:
            n = len(apart)
            gain, shift = torch.randn(2, n, 1, 1, 1, device=apart.device)
            apart = apart * (1 + 0.2 * gain).clamp(0.5, 1.6) + 0.15 * shift
        return apart

    def forward(self, picture):
        """n x 1 x 48 x w in -1 to 1 (1 is white) to n x w/4 x classes, before the softmax."""
        x = self.flat(self.eye(self.evened(picture))).squeeze(2).transpose(1, 2)
        x = self.norm(x)
        for layer in self.layers:
            x = layer(x)
        n, steps, _ = x.shape
        return self.says(self.last(x)).view(n, steps * 2, CLASSES)


def read(logits):
    """The likeliest sign of each step, repeats one and blanks gone."""
    texts = []
    for row in logits.argmax(2).cpu().tolist():
        said, last = [], 0
        for at in row:
            if at and at != last:
                said.append(SIGNS[at - 1])
            last = at
        texts.append(" ".join("".join(said).split()))
    return texts
