"""Drawings as data, from shapes with parameters; knows nothing of guides or pages."""

from fieldid.draw.nodes import Node, svg
from fieldid.draw.owned import owned
from fieldid.draw.pictures import SHAPES, Picture, node, problems
from fieldid.draw.scenes import SCENES, scene, still
from fieldid.draw.shared import shared
from fieldid.draw.swatches import SWATCHES, swatches

__all__ = [
    "SCENES",
    "SHAPES",
    "SWATCHES",
    "Node",
    "Picture",
    "node",
    "owned",
    "problems",
    "scene",
    "shared",
    "still",
    "svg",
    "swatches",
]
