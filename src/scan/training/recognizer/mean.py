"""The mean of the weights of two parts of one training, which reads a little better than either.

python3 mean.py one.pt other.pt mean.pt
"""

import sys

import torch


def mean(one, other):
    return {name: ((value.float() + other[name].float()) / 2).half() for name, value in one.items()}


if __name__ == "__main__":
    torch.save(mean(*(torch.load(path, map_location="cpu") for path in sys.argv[1:3])), sys.argv[3])
