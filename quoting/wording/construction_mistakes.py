"""What is wrong with rounds, motifs, joins and ends, in whole sentences."""

from __future__ import annotations

from quoting.core.ground.codes import MistakeCode
from quoting.wording.phrases import Sentences

CONSTRUCTION_MISTAKES: Sentences = {
    MistakeCode.SIDE_OR_TWO_JOINED: (
        "Give the side of one motif, or the width of two that are joined; give only one of them.",
    ),
    MistakeCode.WEIGHED_OR_UNRAVELLED: (
        "Give the yarn of a motif: how many were weighed together and what they weighed, or the "
        "metres of each round of one that was unravelled.",
    ),
    MistakeCode.NOT_ONE_A_ROUND: (
        "These are the metres of {read} rounds; the motif has {wanted}. Give one for each round.",
    ),
    MistakeCode.NOT_EARLIER: (
        "Round {read} is none before the last, {limit}: give the side after an earlier round.",
    ),
    MistakeCode.SIDES_DO_NOT_FIT: (
        "With this side after round {read} a motif of {wanted} rounds would have begun from "
        "nothing, or not have grown: measure both sides again.",
    ),
    MistakeCode.NAME_OF_A_STITCH: (
        "{read} is the name of a stitch or a pattern: give the motif another.",
    ),
    MistakeCode.UNKNOWN_MOTIF: (
        "The workshop has no motif {read}; it has {known}.",
        "The workshop has no motif {read}: measure one first.",
    ),
    MistakeCode.MOTIF_COUNTED_OTHERWISE: (
        "{read} is worked in another stitch, or its rounds are counted otherwise than these: "
        "choose one that is alike, or none.",
    ),
    MistakeCode.ROUNDS_AND_REPEATS: ("Give the rounds or the repeats of the stripes, not both.",),
    MistakeCode.NO_LONG_SIDE: (
        "A circle or a hexagon is no longer one way than the other: leave this out, or choose a "
        "shape that can be a rectangle.",
    ),
    MistakeCode.SOLID_ALONE: (
        "This counts for solid squares and rectangles alone: leave it out, or choose that shape.",
    ),
    MistakeCode.CLUSTERS_ALONE: (
        "This counts for rounds in clusters alone: leave it out, or choose that shape.",
    ),
    MistakeCode.SEWN_ALONE: (
        "This counts for joins that are sewn alone: leave it out, or choose such a join.",
    ),
    MistakeCode.SHARE_AND_COUNT: (
        "A layout has a share of the motifs or a number of them; give only one.",
    ),
    MistakeCode.LAYOUTS_OR_POOL: (
        "The colours are laid out, or mixed from a pool; give only one of them.",
    ),
    MistakeCode.COUNTS_DO_NOT_ADD: (
        "The layouts come to {read} motifs; the blanket has {wanted}.",
    ),
    MistakeCode.COLOURS_NOT_ROUNDS: (
        "These are the colours of {read} rounds; the motif has {wanted}. Give one for each round.",
    ),
    MistakeCode.NO_ROUND_TO_MIX: (
        "Of the {wanted} rounds of a motif these are the last {read}, which leaves none to mix: "
        "give fewer last rounds, or lay the colours out.",
    ),
    MistakeCode.ONE_LAST_COLOUR: (
        "The last round of all motifs is one strand in {read}, but a motif ends in {wanted}: "
        "end all of them in one colour and join in it, or join otherwise.",
    ),
    MistakeCode.ALL_ROUNDS_AT_ONCE: (
        "The last round of all motifs cannot be one strand where they have no other: "
        "join them otherwise, or give them another round.",
    ),
    MistakeCode.MOTIF_NOT_SQUARE: (
        "{read} has not four sides to be joined in columns and rows: choose a square.",
    ),
    MistakeCode.TOO_MANY_SQUARES: ("This comes to {read} motifs; at most {limit} will do.",),
    MistakeCode.LESS_THAN_A_ROUND: (
        "This is smaller than the first rounds and the border; "
        "the smallest that works is {smallest_cm}.",
    ),
    MistakeCode.LESS_THAN_A_MOTIF: (
        "This is smaller than one motif and the border; the smallest that works is {smallest_cm}.",
    ),
    MistakeCode.TOO_MANY_ROUNDS: ("This comes to {read} rounds; at most {limit} will do.",),
    MistakeCode.NO_BORDER_TO_ENCLOSE: (
        "Ends are enclosed in a border, and there is none: add one, or weave them in.",
    ),
}
