"""Weights to ONNX with halves for numbers, widened as the session loads: python3 export.py weights.pt model.onnx."""

import sys

import numpy as np
import onnx
import torch
from onnx import TensorProto, helper, numpy_helper

from model import EDGES, LOOKS, SPELLINGS, Association, log_scaled  # noqa: F401


class OnePage(torch.nn.Module):
    def __init__(self, model):
        super().__init__()
        self.model = model

    def forward(self, spellings, looks, edges):
        tags, pairs = self.model(spellings[None], looks[None], edges[None])
        return tags[0], pairs[0]


def main(weights, out):
    model = Association()
    model.load_state_dict({name: value.float() for name, value in torch.load(weights, map_location="cpu").items()})
    model.eval()
    count = 24
    edges = torch.rand(count, EDGES) * 30
    example = (torch.randint(1, 8000, (count, SPELLINGS), dtype=torch.int32), torch.rand(count, LOOKS), edges)
    axes = {name: {0: "words"} for name in ("spellings", "looks", "edges", "tags")} | {"pairs": {1: "words", 2: "words"}}
    torch.onnx.export(OnePage(model), example, out, input_names=["spellings", "looks", "edges"], output_names=["tags", "pairs"],
                      dynamic_axes=axes, opset_version=17, dynamo=False)
    graph = onnx.load(out)
    casts = []
    for tensor in list(graph.graph.initializer):
        if tensor.data_type != TensorProto.FLOAT or np.prod(tensor.dims) < 512:
            continue
        half = numpy_helper.from_array(numpy_helper.to_array(tensor).astype(np.float16), tensor.name + "_half")
        graph.graph.initializer.remove(tensor)
        graph.graph.initializer.append(half)
        casts.append(helper.make_node("Cast", [half.name], [tensor.name], to=TensorProto.FLOAT))
    for node in reversed(casts):
        graph.graph.node.insert(0, node)
    onnx.checker.check_model(graph)
    onnx.save(graph, out)


if __name__ == "__main__":
    main(*sys.argv[1:3])
