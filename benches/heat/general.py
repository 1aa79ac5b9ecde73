"""The block on the general finite-volume solver of Debian (`apt install openfoam`): the case in
`volumes/`, laid out for a number of cells, a length of step and an end.

Its alloy gives up all its latent heat at 585 deg C and conducts 120 W/(m K) hot and cold; the rest is
the problem of `problem.py`.
"""
import os
import re
import shutil
import subprocess
from pathlib import Path

HERE = Path(__file__).resolve().parent
ENVIRONMENT = {**os.environ, "WM_PROJECT_DIR": "/usr/share/openfoam"}
PROGRAM = "chtMultiRegionFoam"


def lay_out(case, edge, step_s, end_s, watched=""):
    """Writes the case into a folder that is not there yet, ready to run; `watched` is written down."""
    shutil.copytree(HERE / "volumes", case)
    replace(case / "system/blockMeshDict", r"\(\d+ \d+ \d+\) simpleGrading", f"({edge} {edge} {edge}) simpleGrading")
    control = case / "system/controlDict"
    replace(control, r"endTime \S+;", f"endTime {end_s};")
    replace(control, r"deltaT \S+;", f"deltaT {step_s};")
    control.write_text(control.read_text() + watched)
    shutil.copytree(case / "0", case / "start")
    for command in (["blockMesh"], ["topoSet"], ["splitMeshRegions", "-cellZones", "-overwrite"]):
        subprocess.run(command, cwd=case, env=ENVIRONMENT, check=True, capture_output=True)
    shutil.rmtree(case / "0")
    (case / "start").rename(case / "0")
    # The melting source starts from all liquid, or the metal would have no latent heat to give.
    shutil.copy(case / "0/metal/alpha1.start", case / "0/metal/sol:alpha1")


def replace(path, pattern, by):
    path.write_text(re.sub(pattern, by, path.read_text()))
