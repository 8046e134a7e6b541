"""Writes the trained network as ONNX with its weights in half precision, reckoned with in full, and says its hash.

python3 export.py recognizer.pt recognizer.onnx
"""

import hashlib
import pathlib
import sys

import torch
from torch import nn

from network import Recognizer


def folded(model):
    """Each batch norm worked into the convolution before it: the same answers with less to do."""
    for part in model.modules():
        if isinstance(part, nn.Sequential) and len(part) == 2 and isinstance(part[1], nn.BatchNorm2d):
            part[0] = nn.utils.fusion.fuse_conv_bn_eval(part[0], part[1])
            part[1] = nn.Identity()
    return model


class Halved(nn.Module):
    """The network with a softmax, its weights kept in half precision until they are used."""

    def __init__(self, model):
        super().__init__()
        self.model = model
        for part in model.modules():
            for name, value in list(part._parameters.items()):
                if value is not None and value.ndim > 1:
                    del part._parameters[name]
                    part.register_buffer(f"half_{name}", value.detach().half())

    def forward(self, picture):
        for part in self.model.modules():
            for name in list(part._buffers):
                if name.startswith("half_"):
                    part.__dict__[name[5:]] = part._buffers[name].float()
        return torch.softmax(self.model(picture), 2)


def main(weights, target):
    model = Recognizer()
    kept = torch.load(weights, map_location="cpu")
    model.load_state_dict({name: value.to(model.state_dict()[name].dtype) for name, value in kept.items()})
    model = Halved(folded(model.eval()))
    torch.onnx.export(
        model,
        torch.zeros(1, 1, 48, 256),
        target,
        input_names=["line"],
        output_names=["chances"],
        opset_version=16,
        do_constant_folding=False,
        dynamic_axes={"line": {0: "lines", 3: "width"}, "chances": {0: "lines", 1: "steps"}},
    )
    written = pathlib.Path(target).read_bytes()
    print(f"{len(written)} bytes, SHA-256 {hashlib.sha256(written).hexdigest()}")


if __name__ == "__main__":
    main(*sys.argv[1:])
