"""Limits of advice: the shipped table, somebody's own, and what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from stainmap.errors import CatalogueError
from stainmap.files.advice_file import starter_limits, with_limits
from stainmap.model.advice_limits import Mark

HEAD = 'format = "stainmap advice"\nversion = 1\n'
OWN = '[[limit]]\nname = "connector_back"\nvalue = 10.0\nunit = "mm2"\nmark = "assumed"\n'


def written(folder: Path, text: str) -> Path:
    path = folder / "advice.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_shipped_limits_all_say_where_they_come_from() -> None:
    limits = starter_limits()
    assert len(limits.limits) > 20
    assert all(len(one.source) > 20 for one in limits.limits)
    by_name = {one.name: (one.value, one.mark) for one in limits.limits}
    memory = Mark.FROM_MEMORY
    assert by_name["connector_front"] == (7.0, memory)
    assert by_name["connector_back"] == (9.0, memory)
    assert by_name["connector_long_span"] == (12.0, memory)
    # What is called published names who published it.
    published = [one for one in limits.limits if one.mark is Mark.PUBLISHED]
    assert all("Paravina et al. 2015" in one.source for one in published)
    assert limits["fissure_area"].said == "0.3 mm²"
    assert "common practice, no published source" in limits["adjustment"].origin


def test_own_limits_replace_shipped_ones(tmp_path: Path) -> None:
    own = with_limits(starter_limits(), written(tmp_path, HEAD + OWN + 'source = "my oven"\n'))
    assert own["connector_back"].value == 10.0
    assert own["connector_back"].source == "my oven"
    assert own["connector_front"] == starter_limits()["connector_front"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (HEAD + OWN.replace("connector_back", "connecter") + 'source = "x"\n', "connecter"),
        (HEAD + OWN.replace("mm2", "cm2") + 'source = "x"\n', "in cm2"),
        (HEAD + OWN.replace("10.0", "-1.0") + 'source = "x"\n', "-1.0"),
        (HEAD + OWN.replace("10.0", "nan") + 'source = "x"\n', "nan"),
        (HEAD + OWN.replace("assumed", "certain") + 'source = "x"\n', "certain"),
        (HEAD + OWN + 'source = " "\n', "no source"),
        (HEAD + (OWN + 'source = "x"\n') * 2, "twice"),
        (HEAD + OWN, "source"),
        (HEAD + OWN + 'source = "x"\nmore = 1\n', "more"),
        (HEAD.replace("advice", "shades"), "not a table of limits"),
        (HEAD.replace("1", "2"), "not a table of limits"),
        ("[[limit", "not valid TOML"),
        (HEAD + "#" * (1 << 19), "too large"),
    ],
)
def test_what_is_wrong_is_said_with_the_file(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(CatalogueError, match=r"advice\.toml") as caught:
        with_limits(starter_limits(), written(tmp_path, text))
    assert said in str(caught.value)


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(CatalogueError, match="cannot be read"):
        with_limits(starter_limits(), tmp_path / "advice.toml")
