"""A pip is found for a Python that came without one."""

from __future__ import annotations

import http.server
import importlib.metadata
import subprocess
import sys
import threading
import zipfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest

from stainmap.bootstrap import environment_python
from stainmap.startup import pip_source

PAGE = """<!DOCTYPE html><html><body>
<a href="../../files/ab/pip-9.0.3-py2.py3-none-any.whl#sha256=00">pip-9.0.3</a>
<a href="../../files/cd/pip-23.2.1-py3-none-any.whl#sha256=11" data-requires-python="&gt;=3.7">a</a>
<a href="../../files/ef/pip-23.10-py3-none-any.whl#sha256=22">pip-23.10</a>
<a href="../../files/ef/pip-23.10.tar.gz#sha256=33">pip-23.10.tar.gz</a>
<a href="../../files/gh/pip-24.0b1-py3-none-any.whl#sha256=44">pip-24.0b1</a>
</body></html>"""


class QuietHandler(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Say nothing: every unexpected line fails a test."""


def write_pip_wheel(folder: Path) -> Path:
    """Pack the pip that runs in this environment into a wheel again."""
    try:
        pip = importlib.metadata.distribution("pip")
    except importlib.metadata.PackageNotFoundError:
        pytest.skip("there is no pip in this environment to serve")
    path = folder / f"pip-{pip.version}-py3-none-any.whl"
    with zipfile.ZipFile(path, "w") as wheel:
        for file in pip.files or ():
            if not file.as_posix().startswith("../") and file.suffix != ".pyc":
                wheel.write(str(file.locate()), file.as_posix())
    return path


@pytest.fixture
def index(tmp_path: Path) -> Iterator[str]:
    """Serve a package index that holds nothing but a pip wheel."""
    page = tmp_path / "index" / "simple" / "pip"
    page.mkdir(parents=True)
    wheel = write_pip_wheel(page)
    (page / "index.html").write_text(f'<a href="{wheel.name}#sha256=0">pip</a>', encoding="utf-8")
    handler = partial(QuietHandler, directory=str(tmp_path / "index"))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever, args=(0.05,))
        thread.start()
        yield f"http://127.0.0.1:{server.server_port}/simple"
        server.shutdown()
        thread.join()


def runs(*command: str | Path) -> bool:
    return subprocess.run(command, check=False, capture_output=True).returncode == 0


def test_newest_wheel_of_a_page_is_chosen() -> None:
    """By number, not by letter; neither source archives nor betas nor other Pythons' wheels."""
    found = pip_source.newest_pip_wheel(PAGE, "https://index.example/simple/pip/")
    assert found == "https://index.example/files/ef/pip-23.10-py3-none-any.whl"
    assert pip_source.newest_pip_wheel("<html></html>", "https://index.example/") is None


def test_configured_index_is_found(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The environment wins over a file, and a file later in pip's order over an earlier one."""
    monkeypatch.delenv("PIP_INDEX_URL", raising=False)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    (tmp_path / "pip").mkdir()
    own = tmp_path / "pip" / "pip.conf"
    own.write_text("[global]\nindex-url = https://one.example/simple\n")
    monkeypatch.delenv("PIP_CONFIG_FILE", raising=False)
    assert pip_source.configured_index() == "https://one.example/simple"
    (tmp_path / "named.conf").write_text("[install]\nindex-url = https://two.example/simple\n")
    monkeypatch.setenv("PIP_CONFIG_FILE", str(tmp_path / "named.conf"))
    assert pip_source.configured_index() == "https://two.example/simple"
    (tmp_path / "named.conf").write_text("no section at all\n")
    assert pip_source.configured_index() == "https://one.example/simple"
    monkeypatch.setenv("PIP_INDEX_URL", "https://three.example/simple")
    assert pip_source.configured_index() == "https://three.example/simple"


def test_pip_comes_from_the_configured_index(
    index: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """An environment made without pip has one afterwards, with only the index to get it from."""
    environment = tmp_path / "environment"
    command = [sys.executable, "-m", "venv", "--without-pip", str(environment)]
    subprocess.run(command, check=True)
    python = environment_python(environment)
    assert not runs(python, "-c", "import pip")
    monkeypatch.setenv("PIP_INDEX_URL", index)
    monkeypatch.setenv("no_proxy", "127.0.0.1")
    monkeypatch.setenv("PATH", "")
    monkeypatch.setattr(pip_source, "_SYSTEM_WHEELS", tmp_path / "none")
    assert pip_source.bring_pip(python)
    assert runs(python, "-m", "pip", "--version")
    assert pip_source.pip_command(python) == [str(python), "-m", "pip"]


def test_no_pip_anywhere_is_no_crash(
    index: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PIP_INDEX_URL", f"{index}/not-there")
    monkeypatch.setenv("no_proxy", "127.0.0.1")
    monkeypatch.setenv("PATH", "")
    monkeypatch.setattr(pip_source, "_SYSTEM_WHEELS", tmp_path / "none")
    assert not pip_source.bring_pip(Path(sys.executable))


def test_pip_of_this_python_serves_an_environment_without(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda _: object())
    absent = tmp_path / "bin" / "python"
    assert pip_source.pip_command(absent) == [
        *(sys.executable, "-m", "pip"),
        *("--python", str(absent)),
    ]
    monkeypatch.setattr("importlib.util.find_spec", lambda _: None)
    assert pip_source.pip_command(absent) is None
