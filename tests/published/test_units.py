"""Unit factors, yarn counts, tickets and stitch lengths against published values, at the digits printed.

`how` says whether the source's text was read, or the value is from memory of it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from operator import attrgetter

import pytest

from builder.model.quantity import parse_quantity
from builder.model.units import (
    COTTON_COUNT,
    LINEN_COUNT,
    METRIC_COUNT,
    convert,
    tex_of_cotton_ticket,
    tex_of_metric_ticket,
)

SP811 = "NIST SP 811 (2008), Guide for the Use of the SI, Appendix B.8 / B.9"
YARN = 'textileschool.com, "Yarn conversions", http://www.textileschool.com/articles/159/yarn-conversions'
TICKETS = (
    'apparelmerchandisinglearner.blogspot.com, "Thread ticket number", May 2017, '
    "https://apparelmerchandisinglearner.blogspot.com/2017/05/thread-ticket-number.html"
)
TEX_AND_TICKET = (
    'onlineclothingstudy.com, "Difference between Tex and Tkt in thread numbering", Jan 2013, '
    "https://www.onlineclothingstudy.com/2013/01/difference-between-tex-and-tkt-in.html"
)
GSM = (
    'oureverydaylife.com, "How to convert GSM to ounces", '
    "https://oureverydaylife.com/how-to-convert-gsm-to-ounces-12274536.html"
)


@dataclass(frozen=True)
class Entry:
    """A published value: `printed` as the source prints it, `exact` if the source says so."""

    id: str
    ours: Callable[[], Fraction]
    printed: str
    source: str
    how: str
    exact: bool = False


def tex(text: str) -> Fraction:
    """Thread size of a text [tex]."""
    return parse_quantity(text, "linear density").value


def stitch(per_inch: int) -> Fraction:
    """Stitch length [mm] of so many stitches an inch."""
    return parse_quantity(f"{per_inch} st/in", "stitch length").value


ENTRIES = [
    Entry("unit_inch", lambda: convert(1, "in", "mm"), "25.4", SP811, "read", exact=True),
    Entry("unit_foot", lambda: convert(1, "ft", "m"), "0.3048", "NIST SP 811 (2008) B.7.2", "read", exact=True),
    Entry("unit_yard", lambda: convert(1, "yd", "m"), "0.9144", SP811, "memory", exact=True),
    Entry("unit_mil", lambda: convert(1, "mil", "mm"), "0.0254", SP811, "memory", exact=True),
    Entry("unit_pound", lambda: convert(1, "lb", "kg"), "0.45359237", SP811, "memory", exact=True),
    Entry("unit_ounce", lambda: convert(1, "oz", "g"), "28.349523125", SP811, "memory", exact=True),
    Entry("unit_ounce, printed", lambda: convert(1, "oz", "g"), "28.34952", SP811, "memory"),
    Entry("unit_lbf", lambda: convert(1, "lbf", "N"), "4.4482216152605", SP811, "memory", exact=True),
    Entry("unit_lbf, printed", lambda: convert(1, "lbf", "N"), "4.448222", SP811, "memory"),
    Entry("unit_kgf", lambda: convert(1, "kgf", "N"), "9.80665", SP811, "memory", exact=True),
    Entry("unit_lbf_in", lambda: convert(1, "lbf/in", "N/mm"), "0.1751268", SP811, "memory"),
    Entry("unit_oz_yd2", lambda: convert(1, "oz/yd2", "g/m2"), "33.90575", SP811, "memory"),
    Entry("unit_oz_ft2", lambda: convert(1, "oz/ft2", "g/m2"), "305.1517", SP811, "memory"),
    Entry("unit_denier", lambda: convert(1, "den", "tex"), "0.1111111", SP811, "memory"),
    Entry("unit_fpm", lambda: convert(1, "ft/min", "m/s"), "0.00508", SP811, "memory", exact=True),
    Entry("count_conversions, dtex", lambda: tex("10 dtex"), "1", YARN, "read", exact=True),
    Entry("count_conversions, denier", lambda: tex("9 den"), "1", YARN, "read", exact=True),
    Entry("count_conversions, Nm", lambda: METRIC_COUNT, "1000", YARN, "read", exact=True),
    Entry("count_conversions, cotton", lambda: COTTON_COUNT, "590.54", YARN, "read"),
    Entry("count_conversions, linen", lambda: LINEN_COUNT, "1653.5", YARN, "read"),
    Entry("count_conversions, denier of Ne", lambda: 9 * COTTON_COUNT, "5314.9", YARN, "read"),
    Entry("count_conversions, Nm of Ne", lambda: METRIC_COUNT / COTTON_COUNT, "1.6934", YARN, "read"),
    Entry("count_conversions, Ne of Nm", lambda: COTTON_COUNT / METRIC_COUNT, "0.5905", YARN, "read"),
    Entry("ticket_metric, 40", lambda: tex("tkt 40"), "75", YARN, "read", exact=True),
    Entry("ticket_metric, 20", lambda: tex("tkt 20"), "150", YARN, "read", exact=True),
    Entry("ticket_metric, 120", lambda: tex("tkt 120"), "25", YARN, "read", exact=True),
    Entry(
        "ticket_cotton",
        lambda: tex_of_cotton_ticket(1),
        "1771.6",
        "thread trade convention (3 x cotton count)",
        "memory",
    ),
    Entry("tkt_from_tex40", lambda: tex_of_metric_ticket(40), "75", TEX_AND_TICKET, "read", exact=True),
    Entry(
        "tkt_from_nm80_2",
        lambda: tex_of_metric_ticket(tex("Nm 80/2")),
        "120",
        TEX_AND_TICKET,
        "read",
        exact=True,
    ),
    Entry("tkt_ne_20_3", lambda: tex_of_cotton_ticket(tex("Ne 20/3")), "20", TICKETS, "read", exact=True),
    Entry("tkt_ne_20_2", lambda: tex_of_cotton_ticket(tex("Ne 20/2")), "30", TICKETS, "read", exact=True),
    Entry("tkt_ne_80_4", lambda: tex_of_cotton_ticket(tex("Ne 80/4")), "60", TICKETS, "read", exact=True),
    *(
        Entry(f"stitch_len_{n}spi", lambda n=n: stitch(n), mm, "definition (25.4 mm per inch)", "memory")  # type: ignore[misc]
        for n, mm in {
            4: "6.3500",
            5: "5.0800",
            6: "4.2333",
            7: "3.6286",
            8: "3.1750",
            10: "2.5400",
            12: "2.1167",
            16: "1.5875",
        }.items()
    ),
    Entry("gsm_100_to_oz, per yd2", lambda: convert(100, "g/m2", "oz/yd2"), "2.95", GSM, "read"),
    Entry("gsm_100_to_oz, per m2", lambda: convert(100, "g", "oz"), "3.53", GSM, "read"),
    Entry(
        "linear_yard_mass",  # 12 oz a linear yard of 60 in
        lambda: convert(12, "oz/yd", "g/m") / parse_quantity("60 in", "length").in_unit("m"),
        "244.1",
        "definition",
        "memory",
    ),
    Entry(
        "nylon_thread_AA59826, melting point 472 °F",
        lambda: parse_quantity("472 °F", "temperature").value,
        "244.4",
        "US Commercial Item Description A-A-59826 (3 March 2009)",
        "read",
    ),
]


@pytest.mark.parametrize("entry", ENTRIES, ids=attrgetter("id"))
def test_a_unit_agrees_with_its_published_value(entry: Entry) -> None:
    """Exactly where the source says exact, else to half of the last digit printed."""
    printed = Fraction(entry.printed)
    digits = len(entry.printed.partition(".")[2])
    half = 0 if entry.exact else Fraction(1, 2 * 10**digits)
    assert abs(entry.ours() - printed) <= half, f"{entry.source} ({entry.how})"
