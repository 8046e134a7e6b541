"""What happens to a line between the machine that wrote it and the reader: all of it on a whole batch at once, every line
with its own dice. Ink is 1, paper 0 until the scan; then gray as the scan has it, 1 is white. The service hands over what
was scanned, not what its clean-up makes of it, so that nothing is lost before the network has seen it."""

import math

import torch
import torch.nn.functional as F

OUT = 48


class Dice:
    def __init__(self, seed, device):
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)
        self.device = device

    def unit(self, *shape):
        return torch.rand(*shape, generator=self.generator, device=self.device)

    def bell(self, *shape):
        return torch.randn(*shape, generator=self.generator, device=self.device)

    def between(self, n, low, high):
        return (low + (high - low) * self.unit(n)).view(n, 1, 1, 1)

    def some(self, n, share):
        return (self.unit(n) < share).view(n, 1, 1, 1).float()


def blurred(x, sigma, reach=3):
    """Each picture with its own deviation, one pass along and one across."""
    n, _, h, w = x.shape
    at = torch.arange(-reach, reach + 1, device=x.device, dtype=x.dtype)
    kernel = torch.exp(-0.5 * (at.view(1, -1) / sigma.reshape(n, 1).clamp_min(0.05)) ** 2)
    kernel = kernel / kernel.sum(1, keepdim=True)
    # As shifted sums: kernels of one's own for every picture are slow in convolutions.
    for axis in (2, 3):
        pad = (0, 0, reach, reach) if axis == 2 else (reach, reach, 0, 0)
        wide = F.pad(x, pad, mode="replicate")
        size = x.shape[axis]
        x = kernel[:, 0].view(n, 1, 1, 1) * wide.narrow(axis, 0, size)
        for k in range(1, 2 * reach + 1):
            x.addcmul_(kernel[:, k].view(n, 1, 1, 1), wide.narrow(axis, k, size))
    return x


def field(dice, n, h, w, rows, every):
    """Smooth unrest: a coarse grid of throws made large, deviation near 1."""
    coarse = dice.bell(n, 1, rows, max(2, w // every))
    return F.interpolate(coarse, (h, w), mode="bilinear", align_corners=False)


def grid(n, h, w, device):
    y = (torch.arange(h, device=device) + 0.5).view(1, h, 1).expand(n, h, w)
    x = (torch.arange(w, device=device) + 0.5).view(1, 1, w).expand(n, h, w)
    return x, y


def sampled(picture, x, y, mode="bilinear"):
    h, w = picture.shape[2:]
    where = torch.stack([x / w * 2 - 1, y / h * 2 - 1], -1)
    return F.grid_sample(picture, where, mode=mode, padding_mode="border", align_corners=False)


def mixed(some, a, b):
    return some * a + (1 - some) * b


def pins(ink, dice, capital):
    """The head of a dot-matrix printer: the sign on its grid of pins, each a round dot."""
    n, _, h, w = ink.shape
    pitch = (capital / 7).view(n, 1, 1) * (0.75 + 0.5 * dice.unit(n, 1, 1))
    aspect = 0.6 + 0.5 * dice.unit(n, 1, 1)
    soft = blurred(ink, (pitch.view(n) * 0.3).clamp(0.3, 1.6), 4)
    x, y = grid(n, h, w, ink.device)
    px, py = pitch * aspect, pitch
    cx, cy = (torch.floor(x / px) + 0.5) * px, (torch.floor(y / py) + 0.5) * py
    hit = torch.sigmoid((sampled(soft, cx, cy, "nearest") - dice.between(n, 0.3, 0.5)) * 14)
    radius = (pitch * (0.4 + 0.35 * dice.unit(n, 1, 1))).view(n, 1, 1, 1)
    away = torch.sqrt((x - cx) ** 2 + (y - cy) ** 2).unsqueeze(1)
    return hit * torch.sigmoid((radius - away) * 4)


def jpeg(gray, dice):
    """Blocks of eight as JPEG keeps them, the table of ITU-T T.81 for brightness."""
    table = torch.tensor(
        [
            16,
            11,
            10,
            16,
            24,
            40,
            51,
            61,
            12,
            12,
            14,
            19,
            26,
            58,
            60,
            55,
            14,
            13,
            16,
            24,
            40,
            57,
            69,
            56,
            14,
            17,
            22,
            29,
            51,
            87,
            80,
            62,
            18,
            22,
            37,
            56,
            68,
            109,
            103,
            77,
            24,
            35,
            55,
            64,
            81,
            104,
            113,
            92,
            49,
            64,
            78,
            87,
            103,
            121,
            120,
            101,
            72,
            92,
            95,
            98,
            112,
            100,
            103,
            99,
        ],
        device=gray.device,
        dtype=gray.dtype,
    ).view(1, 8, 8)
    k = torch.arange(8, device=gray.device, dtype=gray.dtype)
    turn = torch.cos((2 * k.view(1, 8) + 1) * k.view(8, 1) * math.pi / 16) * 0.5
    turn[0] *= math.sqrt(0.5)
    n, _, h, w = gray.shape
    quality = dice.between(n, 12, 70)
    scale = torch.where(quality < 50, 50 / quality, 2 - quality / 50).view(n, 1, 1, 1, 1)
    blocks = (gray * 255 - 128).view(n, h // 8, 8, w // 8, 8).permute(0, 1, 3, 2, 4)
    step = table.view(1, 1, 1, 8, 8) * scale.clamp_min(0.05)
    kept = torch.round((turn @ blocks @ turn.T) / step) * step
    back = (turn.T @ kept @ turn).permute(0, 1, 3, 2, 4).reshape(n, 1, h, w)
    return (back + 128) / 255


def damaged(lines, capital, typed, dice, worst=1.0):
    """`lines`: n x 64 x w, ink 255. `typed`: 1 where a dot head may have written it. Answers n x 1 x 48 x w, 1 is white, in
    -1 to 1 as the network takes it. `worst` scales how bad it may be."""
    n, h, w = lines.shape
    ink = lines.unsqueeze(1).float() / 255
    # A quarter of the lines is nearly clean: printed forms on good scans must not be lost.
    bad = worst * (dice.unit(n) ** 1.2).view(n, 1, 1, 1) * dice.some(n, 0.8)
    # And nearly half are coarse scans with grain, down to capitals of eight points, faded or of one bit.
    worn = worst * dice.some(n, 0.45)
    ink = mixed(dice.some(n, 0.28) * typed.view(n, 1, 1, 1), pins(ink, dice, capital), ink)

    # Strokes thicker or thinner than the type, ink that spreads, a carbon's blur.
    level = 0.5 - dice.bell(n, 1, 1, 1) * 0.13
    sharp = dice.between(n, 4, 14)
    spread = blurred(ink, 0.35 + dice.unit(n) * 1.3)
    ink = mixed(dice.some(n, 0.65), torch.sigmoid((spread - level) * sharp) - torch.sigmoid(-level * sharp), ink).clamp(0, 1)
    ink = mixed(dice.some(n, 0.3), blurred(ink, dice.unit(n) * 1.5 * (0.3 + bad.view(n))), ink)

    # Ribbon and stamp: ink uneven over the line and within the sign.
    cloud = field(dice, n, h, w, 3, 24)
    ink = ink * (1 - dice.some(n, 0.4) * bad * (cloud * 0.5).clamp(0, 0.9))
    fine = field(dice, n, h, w, 16, 4)
    ink = ink * (1 - dice.some(n, 0.35) * dice.between(n, 0, 0.9) * bad * (fine - 0.3).clamp(0, 1))
    fall = torch.linspace(-1, 1, h, device=ink.device).view(1, 1, h, 1) * dice.bell(n, 1, 1, 1)
    ink = ink * (1 - dice.some(n, 0.12) * (fall * 0.8).clamp(0, 0.8))

    # To the scanner: finer or coarser, askew, sheared, the paper not flat.
    x, y = grid(n, h, w, ink.device)
    scale = (1 / (1 + bad.view(n, 1, 1) * (0.2 + 1.5 * dice.unit(n, 1, 1) ** 1.5))) * (0.9 + 0.2 * dice.unit(n, 1, 1))
    scale = mixed(worn.view(n, 1, 1), 1 / (1.15 + 1.75 * dice.unit(n, 1, 1)), scale)
    scale = torch.maximum(scale, (8 / capital).view(n, 1, 1)).clamp(max=1.1)
    slope = dice.bell(n, 1, 1) * 0.012 * (24 * 18 / max(w, 400))
    shear = dice.bell(n, 1, 1) * 0.06
    wave = 0.3 + 1.2 * dice.unit(n, 1, 1) * dice.some(n, 0.4).view(n, 1, 1)
    bend_x, bend_y = field(dice, n, h, w, 3, 40).squeeze(1) * wave, field(dice, n, h, w, 3, 48).squeeze(1) * wave
    sx, sy = x / scale, y / scale
    aim = 0.42 + 0.45 * dice.unit(n) * worn.view(n)
    soft = blurred(ink, (aim / scale.view(n)).clamp(0.1, 1.7), 4)
    tall = 1 + dice.bell(n, 1, 1) * 0.04
    from_y = (sy - 32) * tall + 32 + (sx - w / 2) * slope + bend_y
    from_x = sx + (sy - 32) * shear + bend_x
    scan = sampled(soft, from_x, from_y)

    # Paper, light, grain, specks, streaks.
    # How dark this line's strokes are at this fineness: thresholds go by it, or fine print would be lost whole.
    stroke = ((scan * scan).sum((2, 3), keepdim=True) / scan.sum((2, 3), keepdim=True).clamp_min(1)).clamp(0.15, 1)
    paper = dice.between(n, 0.65, 1)
    contrast = mixed(dice.some(n, 0.5), dice.between(n, 0.7, 1), 1 - bad * dice.between(n, 0.2, 0.85))
    contrast = mixed(worn, dice.between(n, 0.3, 0.9), contrast)
    shade = dice.bell(n, 1, 1, 1) * 0.1 * torch.linspace(-1, 1, w, device=ink.device).view(1, 1, 1, w) * bad
    gray = (paper + shade) * (1 - scan * contrast)
    through = torch.flip(torch.roll(ink, 17, 3), (3,))
    gray = gray - dice.some(n, 0.06) * bad * 0.25 * blurred(through, torch.full((n,), 1.5, device=ink.device)) * paper
    grain = dice.bell(n, 1, h, w)
    coarse = blurred(grain, dice.unit(n) * 1.2) * 1.6
    # Where only one bit is kept, as a fax or a film's print has it, more grain than this would leave nothing to read.
    one_bit = mixed(worn, dice.some(n, 0.38), dice.some(n, 0.3) * (bad > 0.05)) * (worst > 0)
    rough = mixed(worn, dice.between(n, 0.03, 0.3), dice.between(n, 0, 0.34) * bad.sqrt())
    rough = rough * (0.4 + 0.6 * stroke) * (1 - 0.6 * one_bit)
    gray = gray + rough * contrast * mixed(dice.some(n, 0.5), grain, coarse)
    specks = F.max_pool2d((dice.unit(n, 1, h, w) < 0.0025 * bad * dice.some(n, 0.5)).float(), 3, 1, 1)
    specks = specks * (dice.unit(n, 1, h, w) < 0.75)
    gray = mixed(specks, mixed(dice.some(n, 0.75), torch.full_like(gray, 0.1), paper.expand_as(gray)), gray)
    streak = (dice.unit(n, 1, 1, w) < 0.004 * bad).float() * dice.some(n, 0.4)
    gray = gray - streak * dice.between(n, -0.3, 0.4)
    lost = (dice.unit(n, 1, h, 1) < 0.03 * bad).float() * dice.some(n, 0.1)
    gray = mixed(lost, paper.expand_as(gray), gray)

    # One bit by a threshold that may lose the thinnest strokes; else as JPEG keeps it.
    dark = paper * (1 - contrast)
    cut = paper - (paper - dark) * stroke * dice.between(n, 0.4, 1.08)
    bit = (gray > cut).float()
    kept = mixed(dice.some(n, 0.5), jpeg(gray.clamp(0, 1), dice), gray)
    gray = mixed(one_bit, bit, kept).clamp(0, 1)
    paper, dark = mixed(one_bit, torch.ones_like(paper), paper), mixed(one_bit, torch.zeros_like(dark), dark)

    # Back to the height that the network reads at: the scan's points as squares or run together, then turned level.
    rest = dice.bell(n, 1, 1) * 0.003
    ox, oy = grid(n, OUT, w, ink.device)
    ox, oy = ox, oy + (h - OUT) / 2
    fx, fy = ox * scale, (oy + (ox - w / 2) * rest) * scale
    squares = dice.some(n, 0.35) * dice.unit(n, 1, 1, 1)
    gray = mixed(squares, sampled(gray, fx, fy, "nearest"), sampled(gray, fx, fy))
    # The service softens what was scanned, since squares and grain hide strokes; a line of larger type feels less of it.
    gray = blurred(gray, mixed(dice.some(n, 0.75), dice.between(n, 0.7, 2.0), dice.between(n, 0.1, 0.9)).view(n), 4)

    # What some scanners do by themselves: all near the paper made white, the darkest black; not always well.
    white = mixed(dice.some(n, 0.94), paper - (paper - dark) * stroke * dice.between(n, -0.03, 0.5), torch.ones_like(paper))
    black = mixed(dice.some(n, 0.8), dark * dice.between(n, 0.7, 1.15), torch.zeros_like(dark))
    cleaned = ((gray - black) / (white - black).clamp_min(0.08)).clamp(0, 1)
    return mixed(dice.some(n, 0.3), cleaned, gray.clamp(0, 1)) * 2 - 1
