"""The size of print follows from how much there is to print."""

from webapp import print_type


def test_more_text_is_never_printed_larger_and_small_paper_never_larger_than_large():
    sizes = [print_type.largest(count, 1) for count in range(0, 20_000, 250)]
    assert sizes == sorted(sizes, reverse=True) and sizes[0] == 12 and sizes[-1] == 6
    assert all(print_type.largest(count, print_type.A5_ROOM) <= print_type.largest(count, 1) for count in range(0, 20_000, 250))


def test_what_tells_look_alikes_apart_makes_room_only_where_print_would_be_small():
    """Hand arithmetic: at 8 pt (0.96 - 0.12) / (2.35e-6 * 64) = 5585 characters fill a page."""
    long = "<p>" + "x" * 5500 + "</p>" + '<p class="sheet__difference">' + "y" * 500 + "</p>"
    classes = print_type.classes(long).split()
    assert classes[0] == "sheet--16" and classes[-1] == "sheet--brief"
    assert "sheet--brief" not in print_type.classes(long.replace("x" * 5500, "x" * 5000))


def test_tags_are_not_counted():
    assert print_type.characters("<p><strong>No-rep:</strong> ab</p>") == len("No-rep: ab")
