"""Makes the smaller network of the first two parts into the larger one of the third: what is new does nothing at first, so that
the larger network begins with all that the smaller one had learned.

python3 grow.py smaller.pt larger.pt
"""

import sys

import torch

from network import Recognizer

# Where the smaller network's parts of the eye stand in the larger one.
PLACES = {0: 0, 2: 2, 4: 4, 5: 5, 6: 7, 8: 9, 9: 10, 10: 12, 12: 14}


def grown(smaller):
    torch.manual_seed(20261201)
    model = Recognizer()
    # A residual adds nothing, and a layer tells nothing, until training gives them something to say.
    for at in (6, 11, 15):
        torch.nn.init.zeros_(model.eye[at].second[1].weight)
    for layer in model.layers[3:]:
        for part in (layer.tell, layer.mix, layer.back):
            torch.nn.init.zeros_(part.weight)
            torch.nn.init.zeros_(part.bias)
    state = model.state_dict()
    for name, value in smaller.items():
        parts = name.split(".")
        if parts[0] == "eye":
            parts[1] = str(PLACES[int(parts[1])])
        state[".".join(parts)] = value.to(state[".".join(parts)].dtype)
    return state


if __name__ == "__main__":
    torch.save({name: value.half() if value.is_floating_point() else value for name, value in grown(torch.load(sys.argv[1], map_location="cpu")).items()}, sys.argv[2])
