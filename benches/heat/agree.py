"""Sets `oddside conduct` beside two general solvers on the same problem, cells and all.

    python3 benches/heat/agree.py PATH/TO/oddside [--step 0.2] [--implicit]

The first is the general finite-volume solver of Debian (`apt install openfoam`), on
`examples/conduction/p1-32-arrest.toml`: probes at the middles of cells at each moment of that file,
and when the last of the metal is solid. With `--implicit` the second is FiPy (needs fipy and scipy),
on `p1-32.toml`: when the last of the metal is solid, looked at every 2 s. A minute and four minutes
of one core.
"""
import argparse
import json
import os
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

import numpy as np

import general
import problem

HERE = Path(__file__).resolve().parent
CASES = HERE.parent.parent / "examples" / "conduction"
EDGE = 32
KELVIN = 273.15


def ours(program, name):
    said = subprocess.run([program, "conduct", str(CASES / name), "--json"], check=True, capture_output=True, text=True)
    return json.loads(said.stdout)


def volumes(case_file, step_s):
    """Last freezing of the general solver and, by moment, the temperature of each probe."""
    probes = {True: [], False: []}
    metal = problem.metal_mask(EDGE)
    for probe in case_file["probe"]:
        x, y, z = (int(mm / 256 * EDGE) for mm in probe["at_mm"])
        probes[bool(metal[z, y, x])].append(probe)
    with tempfile.TemporaryDirectory() as folder:
        case = Path(folder) / "case"
        moments = case_file["run"]["moments_s"]
        end_s = case_file["run"]["until_s"]
        general.lay_out(case, EDGE, step_s, end_s, watched(probes))
        subprocess.run([general.PROGRAM], cwd=case, env=general.ENVIRONMENT, check=True, capture_output=True)
        celsius = {}
        for is_metal, region in ((True, "metal"), (False, "sand")):
            rows = np.loadtxt(case / f"postProcessing/{region}Probes/{region}/0/T", ndmin=2)
            for column, probe in enumerate(probes[is_metal]):
                found = [rows[np.argmin(abs(rows[:, 0] - s)), column + 1] - KELVIN for s in moments]
                celsius[probe["name"]] = found
        liquid = np.loadtxt(case / "postProcessing/metal/liquid/0/fieldMinMax.dat")
    return liquid[liquid[:, 2] > 0.0][-1, 0] + step_s, celsius


def watched(probes):
    """What the general solver writes down: the largest share of liquid and the probes, every step."""
    every = "writeControl timeStep; writeInterval 1;"
    text = 'functions { liquid { type fieldMinMax; libs (fieldFunctionObjects); region metal; fields ("sol:alpha1"); '
    text += f"location no; {every} }}\n"
    for is_metal, region in ((True, "metal"), (False, "sand")):
        places = " ".join("({} {} {})".format(*(mm / 1e3 for mm in probe["at_mm"])) for probe in probes[is_metal])
        text += f"{region}Probes {{ type probes; libs (sampling); region {region}; fields (T); "
        text += f"probeLocations ({places}); {every} }}\n"
    return text + "}\n"


def told(what, mine, other, unit):
    print(f"{what:<34}{mine:>10.2f}{other:>10.2f} {unit:<4}{mine - other:>8.2f}")


def main():
    given = argparse.ArgumentParser()
    given.add_argument("oddside")
    given.add_argument("--step", type=float, default=0.2)
    given.add_argument("--implicit", action="store_true")
    wanted = given.parse_args()
    print(f"{'':<34}{'ours':>10}{'theirs':>10}     {'apart':>8}")
    name = "p1-32-arrest.toml"
    case_file = tomllib.loads((CASES / name).read_text())
    answer = ours(wanted.oddside, name)
    last_s, celsius = volumes(case_file, wanted.step)
    told("general volumes: last freezing", answer["last_freeze_s"], last_s, "s")
    for number, moment in enumerate(answer["moments"][:-1]):
        for probe in moment["probes"]:
            what = f"  {probe['name']} at {moment['time_s']:.0f} s"
            told(what, probe["celsius"], celsius[probe["name"]][number], "°C")
    if wanted.implicit:
        command = [sys.executable, str(HERE / "implicit.py"), str(EDGE), "0"]
        environment = {**os.environ, "FIPY_SOLVERS": "scipy"}
        said = subprocess.run(command, check=True, capture_output=True, text=True, env=environment)
        answer = ours(wanted.oddside, "p1-32.toml")
        told("implicit in Python: last freezing", answer["last_freeze_s"], json.loads(said.stdout)["end_s"], "s")


main()
