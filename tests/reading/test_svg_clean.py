"""Drawings from elsewhere: what is kept, what is dropped and told, and what is refused."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading import PhotoFault, clean_svg
from builder.reading.svg_parse import SVG_LIMIT
from builder.reading.svg_values import READERS

OPEN = (
    '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
    ' xmlns:other="urn:other" viewBox="0 0 100 50">'
)


def cleaned(body: str) -> str:
    """What is kept of a body, without the outermost element."""
    svg = clean_svg(f"{OPEN}{body}</svg>".encode()).svg
    return re.sub(r"^<svg[^>]*>|</svg>$", "", svg)


def dropped(body: str) -> tuple[str, ...]:
    return clean_svg(f"{OPEN}{body}</svg>".encode()).dropped


def test_plain_drawing_is_kept() -> None:
    body = (
        '<defs><linearGradient id="g"><stop offset="10%" stop-color="#f00"></stop></linearGradient></defs>'
        '<g transform="rotate(3 1,2)" fill="url(#g)"><path d="M0 0L1 1Z" stroke-width="0.5"></path>'
        '<circle cx="1" cy="2" r="3"></circle><use href="#g"></use></g>'
        '<text x="1" y="2" text-anchor="middle">a<tspan dx="1">b</tspan></text>'
    )
    assert cleaned(body) == body
    assert dropped(body) == ()


@pytest.mark.parametrize(
    ("body", "told"),
    [
        ("<script>alert(1)</script>", "scripts"),
        ("<foreignObject><div/></foreignObject>", "foreign content"),
        ('<image href="https://example.org/a.png"/>', "embedded pictures"),
        ('<image href="data:image/png;base64,AAAA"/>', "embedded pictures"),
        ('<rect onclick="x()"/>', "event attributes"),
        ('<use href="https://example.org/a.svg#b"/>', "references to outside"),
        ('<use xlink:href="data:x#b"/>', "references to outside"),
        ('<rect fill="url(https://example.org/a)"/>', "references to outside"),
        ('<rect style="fill:url(//example.org/a#b)"/>', "references to outside"),
        ('<rect clip-path="url(other.svg#c)"/>', "references to outside"),
        ("<style>@import url(https://example.org/a.css);</style>", "style rules that are no plain ones"),
        ('<rect><animate attributeName="x" to="9"/></rect>', "animations"),
        ('<rect><set attributeName="href" to="javascript:1"/></rect>', "animations"),
        ('<filter id="f"/>', "filters"),
        ('<rect mask="url(#m)"/>', "references to outside"),
        ("<video/>", "<video>"),
        ('<path d="M0 0L1e99 1"/>', "unreadable values of d"),
    ],
)
def test_what_could_run_load_or_move_is_left_out_and_told(body: str, told: str) -> None:
    assert told in dropped(body)
    kept = cleaned(body).lower()
    assert not re.search(r"script|example|data:|http|animate|onclick|<set|<image|foreign|import|url\(|video|99", kept)


def test_a_link_is_a_group() -> None:
    assert cleaned('<a href="javascript:alert(1)"><rect width="1"/></a>') == '<g><rect width="1"></rect></g>'


def test_styles_become_attributes_in_their_order() -> None:
    """The sharper selector counts, the own style before all."""
    style = "<style>/* x */ rect{fill:red} #b{fill:blue} .a, .c{fill:lime;stroke:none}</style>"
    assert cleaned(f'{style}<rect class="a"/>') == '<rect fill="lime" stroke="none"></rect>'
    assert 'fill="blue"' in cleaned(f'{style}<rect class="a" id="b"/>')
    assert 'fill="tan"' in cleaned(f'{style}<rect class="a" id="b" style="fill:tan"/>')


def test_a_fill_that_is_left_out_is_none_and_not_black() -> None:
    assert cleaned('<pattern id="p"/><rect fill="url(#p)"/>') == '<rect fill="none"></rect>'
    assert cleaned('<pattern id="p"/><rect fill="url(#p) red"/>') == '<rect fill="red"></rect>'


def test_editors_own_elements_go_without_a_word() -> None:
    assert dropped('<other:view/><metadata><x/></metadata><rect other:a="1" data-name="b"/>') == ()


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (f'<!DOCTYPE svg [<!ENTITY a "b">]>{OPEN}&a;</svg>', "document type or entities"),
        (
            '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>' + OPEN + "&b;</svg>",
            "document type or entities",
        ),
        (f'<!DOCTYPE svg SYSTEM "file:///etc/passwd">{OPEN}</svg>', "document type or entities"),
        (f"{OPEN}&nbsp;</svg>", "undefined entity"),
        (f"{OPEN}<rect>", "no element found"),
        ("no drawing", r"no XML: syntax error \(line 1, column 1\)"),
        ("<html/>", "no SVG drawing"),
        ('<svg xmlns="http://www.w3.org/2000/svg"/>', "has no size"),
        ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 5"/>', "has no size"),
        ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 500"/>', "long and narrow"),
        (OPEN + "<g>" * 70 + "</g>" * 70 + "</svg>", "nested deeper"),
        (OPEN + "<g/>" * 20_001 + "</svg>", "more than 20,000 elements"),
        (OPEN + '<g id="a"><use href="#a"/></g></svg>', "refers to itself"),
        (OPEN + '<clipPath id="a"><rect clip-path="url(#a)"/></clipPath></svg>', "refers to itself"),
        (OPEN + "<style>.a{fill:red}" + ".a{}" * 2001 + "</style></svg>", "style rules"),
        (OPEN + "<!--" + "x" * SVG_LIMIT + "--></svg>", "more than 2 MB"),
    ],
)
def test_what_is_refused(data: str, message: str) -> None:
    with pytest.raises(PhotoFault, match=message):
        clean_svg(data.encode())


def test_uses_of_uses_are_counted_as_drawn() -> None:
    """Ten lines for a thousand million shapes."""
    levels = "".join(f'<g id="n{i}">' + f'<use href="#n{i - 1}"/>' * 10 + "</g>" for i in range(1, 10))
    with pytest.raises(PhotoFault, match="Drawn out"):
        cleaned(f'<g id="n0"><rect/></g>{levels}')


def test_markers_are_counted_at_every_corner() -> None:
    marker = '<marker id="m">' + "<rect/>" * 100 + "</marker>"
    with pytest.raises(PhotoFault, match="Drawn out"):
        cleaned(f'{marker}<path marker-mid="url(#m)" d="M0 0{"L1 1" * 1000}"/>')
    assert "marker" in cleaned(f'{marker}<path marker-end="url(#m)" d="M0 0L1 1"/>')


def test_a_size_in_millimetres_makes_a_view_box() -> None:
    drawing = clean_svg(b'<svg xmlns="http://www.w3.org/2000/svg" width="50.8mm" height="1in"/>')
    assert (drawing.width, drawing.height) == pytest.approx((192, 96))


@pytest.mark.parametrize("text", ["9" * 100_000, "a" * 100_000, "/*" * 50_000, "}" * 100_000, ".a," * 30_000])
def test_long_styles_are_read_to_their_end(text: str) -> None:
    """No pattern here looks at a letter again and again: this test would not come to its end."""
    assert cleaned(f"<style>{text}</style>") == ""


TRICKS = [
    "url(#a)",
    "URL(http://x)",
    "url( 'http://x#a' )",
    "javascript:1",
    "u\\72l(x)",
    "&#x75;rl(y)",
    "expression(1)",
    "<x>",
]


@given(st.sampled_from(sorted(READERS)), st.one_of(st.text(max_size=30), st.sampled_from(TRICKS)))
def test_no_value_gets_out_of_its_attribute(name: str, value: str) -> None:
    """Whatever is typed, the result is XML with allowed attributes, and addresses only inside."""
    typed = "".join(letter for letter in value if letter.isprintable())
    quoted = typed.replace("&", "&amp;").replace("<", "&lt;").replace('"', "&quot;")
    svg = clean_svg(f'{OPEN}<rect {name}="{quoted}"/></svg>'.encode()).svg
    for node in ElementTree.fromstring(svg).iter():
        for key, kept in node.attrib.items():
            assert key in READERS
            assert "http" not in kept.lower() or name == "id"
            assert not re.search(r"url\((?!#)|\\|expression\(", kept, re.IGNORECASE)
