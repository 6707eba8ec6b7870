"""What stands behind a plan: why, the picture of strength left, and what to see on the clock."""

import re

import pytest

from .conftest import SMALL, go_to

pytestmark = pytest.mark.browser
FIGURE = "[data-plan-why] figure.curve"  # try my own has a picture too


@pytest.fixture
def plan(look_at, class_links, keen):
    page = look_at(class_links[0], size=SMALL, storage_state=keen)
    go_to(page, "plan")
    return page


def seconds(text):
    """0:45 -> 45."""
    minutes, rest = text.split(":")
    return int(minutes) * 60 + int(rest)


def test_why_says_what_one_more_and_less_rest_would_do(plan):
    details = plan.locator("[data-why]").nth(1)
    details.locator("summary").click()
    details.and_(plan.locator("[data-told]")).wait_for()
    lines = details.locator(".stack p").all_inner_texts()
    assert re.match(r"What gives out first here: .+ Lowest strength left: \d+%", lines[0])
    assert lines[1].startswith("Opening with one more, ")
    assert lines[2].startswith("Two seconds less of every rest:")
    assert all(re.search(r"\d+%|You would fail rep \d+", line) for line in lines)


def test_one_more_in_the_opening_set_never_leaves_more_for_the_last(plan):
    """Set against the whole block it did: the last set, the hardest, was the smaller by it."""
    found = 0
    for details in plan.locator("[data-why]").all():
        details.evaluate("one => { one.open = true; }")
        details.and_(plan.locator("[data-told]")).wait_for()
        for left, before in re.findall(r"before the last set: (\d+)% instead of (\d+)%", details.inner_text()):
            found += 1
            assert int(left) < int(before)
    assert found > 0


def test_of_rounds_done_alike_the_lowest_of_all_is_told(look_at, shape_links, keen):
    """What stands behind rounds shown together is not the first round's, the freshest, but as low as the picture goes."""
    page = look_at(shape_links["fits"], size=SMALL, storage_state=keen)
    go_to(page, "plan")
    details = page.locator("[data-why]").first
    details.evaluate("one => { one.open = true; }")
    details.and_(page.locator("[data-told]")).wait_for()
    told = re.search(r"Lowest strength left: (\d+%)", details.inner_text())[1]
    assert told in page.locator("[data-plan-why] .curve__legend li").first.inner_text()
    assert page.locator("[data-why]").count() == 1


def test_every_block_that_is_broken_up_has_its_number_and_its_why(plan):
    broken = plan.locator('[data-mode="sets"]:has([data-why])')
    assert broken.count() >= 2
    for block in broken.all():
        assert re.search(r"\d", block.locator(".soft").first.inner_text() + block.locator(".soft").last.inner_text())


def test_one_sentence_stands_below_a_block_and_the_rest_behind_it(plan):
    """The second block opens smaller than fresh and ends larger: both are true, and neither is the first thing to read."""
    block = plan.locator('[data-mode="sets"]').first
    assert block.locator("p.soft").all_inner_texts() == [block.locator("p.soft").first.inner_text()]
    block.locator("[data-why] summary").click()
    block.locator("[data-why][data-told]").wait_for()
    assert "That is why the sets are smaller than fresh." in block.locator("[data-why]").inner_text()


def test_a_machine_has_its_pace(plan):
    assert re.search(r"\d+ calories a minute", plan.locator('[data-block="0"] .facts').inner_text())


def test_the_number_that_would_narrow_the_range_stands_beside_it(plan):
    assert "the range shrinks to" in plan.locator('[data-plan-head] a[href="#numbers"]').inner_text()
    assert "the range shrinks to" not in plan.locator("[data-plan-why]").inner_text()


def test_the_clock_list_rises_and_agrees_with_the_blocks(plan):
    rows = plan.locator(".splits > div")
    times = [seconds(text) for text in rows.locator("dd").all_inner_texts()]
    assert times == sorted(times) and len(times) >= 5
    assert [row.split(":")[0] for row in rows.locator("dt").all_inner_texts() if ":" in row] == ["A quarter", "Half", "Three quarters"]
    ends = {text.split("\u2013")[1].strip() for text in plan.locator(".facts dd").all_inner_texts() if "\u2013" in text}
    done = [row.locator("dd").inner_text() for row in rows.all() if row.locator("dt").inner_text().endswith("done")]
    assert done and set(done) <= ends


def test_the_picture_is_readable_on_a_small_phone_and_told_in_words(plan):
    figure = plan.locator(FIGURE)
    heights = figure.locator("text").evaluate_all("all => all.map(one => one.getBoundingClientRect().height)")
    assert min(heights) >= 11  # px; chosen: the smallest a printed label of the page has
    words = figure.locator(".curve__legend li:not(.curve__key)").all_inner_texts()
    assert len(words) >= 3
    assert all(re.search(r"\d+%|\d+:\d\d", line) for line in words)
    assert figure.locator("svg[role=img]").first.get_attribute("aria-label")
    assert [line.split(":")[0] for line in figure.locator(".curve__key").all_inner_texts()] == ["Beneath", "Splits"]


def test_the_picture_marks_sets_splits_quarters_and_the_end(plan):
    """As many dashed lines as block ends in the list of times; a wedge for each quarter."""
    ends = [row for row in plan.locator(".splits dt").all_inner_texts() if row.endswith("done")]
    assert plan.locator(f"{FIGURE} .curve__split").count() == len(ends) + 1  # one more in the legend
    assert plan.locator(f"{FIGURE} .curve__quarter").get_attribute("d").count("z") == 3
    assert plan.locator(f"{FIGURE} line.curve__cap").count() == 2  # in the picture and in the legend


def test_the_picture_is_on_paper_too(plan):
    plan.emulate_media(media="print")
    assert plan.locator(FIGURE).is_visible()
    assert not plan.locator("[data-plan-own]").is_visible()
    assert not plan.locator("[data-why]").first.is_visible()


def test_the_card_tells_when_each_block_is_done(plan):
    ends = [row.locator("dd").inner_text() for row in plan.locator(".splits > div").all() if row.locator("dt").inner_text().endswith("done")]
    go_to(plan, "card")
    sizes = plan.locator(".card__name small").all_inner_texts()
    assert [end for end in ends if any(size.endswith(f"done by {end}") for size in sizes)] == ends


def test_ways_on_and_back_are_high_enough_to_press(plan):
    heights = plan.eval_on_selector_all('[data-screen="plan"] .row > a', "all => all.filter(one => one.offsetParent).map(one => one.getBoundingClientRect().height)")
    assert len(heights) >= 3 and min(heights) >= 44  # px; the target size of WCAG 2.2, 2.5.5


def test_rounds_done_alike_say_whose_times_stand_there(look_at, shape_links, keen):
    page = look_at(shape_links["fits"], size=SMALL, storage_state=keen)
    go_to(page, "plan")
    assert "Interval 1 on the clock" in page.inner_text("[data-plan-body]")
