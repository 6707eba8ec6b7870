"""Every form the engine may use, as functions that need no input: their results must be the same in both places."""

from .arithmetic import (
    comparisons_called,
    constants,
    every_division,
    extremes_called,
    floats_of_texts,
    floor_of_tenths,
    functions_of_math,
    in_place_called,
    not_a_number,
    powers,
    rounding,
    sums,
)
from .control import (
    calls,
    classes,
    fails_little,
    fails_much,
    inner_functions,
    logic,
    loops,
    random_numbers,
    recursion_called,
    returns,
    words_called,
)
from .dicts import changed, kinds_called, looked_up_called, made_called, texts_called, walked_called
from .errors import EngineError
from .lists import (
    comprehension_variables,
    equalities_called,
    grown_while_looping,
    iteration,
    joined_called,
    membership_called,
    methods,
    orders_called,
    rows_share_called,
    slices_called,
    sorting,
    truths_called,
    unpacking,
    while_there_is_any,
)
