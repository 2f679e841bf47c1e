"""Loads every file of a folder, each in a process of its own with limits; one line of JSON each.

`python -m tests.malformed.child FOLDER`; started by the tests. What a file does to its process
cannot hurt anybody else.
"""

from __future__ import annotations

import json
import os
import resource
import sys
import time
import warnings
from pathlib import Path

from stainmap.errors import MeshFileError
from stainmap.surface.loading import load_mesh

ADDRESS_SPACE_BYTES = 4 << 30
PROCESSOR_SECONDS = 60


def report(path: Path) -> dict[str, object]:
    """Return what came of one file."""
    warnings.simplefilter("error")
    start = time.process_time()
    try:
        loaded = load_mesh(path)
    except MeshFileError as error:
        told: dict[str, object] = {
            "outcome": "refused",
            "message": error.message,
            "where": error.where,
            "advice": error.advice,
        }
    except BaseException as error:  # noqa: BLE001 - that is what is looked for
        told = {"outcome": "escaped", "message": f"{type(error).__name__}: {error}"[:300]}
    else:
        told = {
            "outcome": "read",
            "faces": loaded.mesh.face_count,
            "notes": [*loaded.repairs, *loaded.warnings],
        }
    told["seconds"] = time.process_time() - start
    return told


def in_a_process(path: Path) -> dict[str, object]:
    """Return the report of a file from a child with limits, or how the child died."""
    out, into = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(out)
        resource.setrlimit(resource.RLIMIT_AS, (ADDRESS_SPACE_BYTES, ADDRESS_SPACE_BYTES))
        resource.setrlimit(resource.RLIMIT_CPU, (PROCESSOR_SECONDS, PROCESSOR_SECONDS))
        told = report(path)
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        told["peak_mb"] = peak / (1 << 20 if sys.platform == "darwin" else 1 << 10)
        os.write(into, json.dumps(told).encode())
        os._exit(0)
    os.close(into)
    with os.fdopen(out, "rb") as stream:
        said = stream.read()
    _, status = os.waitpid(child, 0)
    return json.loads(said) if said else {"outcome": "died", "message": f"status {status}"}


if __name__ == "__main__":
    for path in sorted(Path(sys.argv[1]).iterdir()):
        print(json.dumps({"name": path.name} | in_a_process(path)), flush=True)
