"""Times `oddside conduct` on the block with a feeder beside other programs, all in one run.

    python3 benches/heat/compare.py PATH/TO/oddside [--edge 128] [--rounds 5]

Needs numpy, numba, scipy, fipy, and for the last row the general finite-volume solver of Debian
(`apt install openfoam`); what is missing is left out. Each round runs ours whole and the others for
a few steps, one after the other, so that all see the same machine; a few steps are scaled to a
whole run, which would take hours. Best and median of the rounds by the clock and by processor time,
and how busy the machine was. A program counts only if its own answer is near: explicit steps are run
to the end once at 32 cells an edge, where the block is solid at 705 s, and the general solver, whose
alloy freezes at one temperature, at 680 s there; `agree.py` looks closer.
"""
import argparse
import json
import os
import re
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import general

HERE = Path(__file__).resolve().parent
CASES = HERE.parent.parent / "examples" / "conduction"
VOLUMES_STEP_S = 2.0
"""Step of the general solver; its own steps until 652 s."""


def run(command, **more):
    """Wall and processor time of a process with what it prints."""
    before, begun = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    said = subprocess.run(command, check=True, capture_output=True, text=True, **more)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return time.perf_counter() - begun, cpu, said.stdout


def ours(program, edge):
    wall, cpu, said = run([program, "conduct", str(CASES / f"p1-{edge}.toml"), "--json"])
    return wall, cpu, json.loads(said)["last_freeze_s"]


def scaled(script, edge, steps):
    """A peer in Python, its steps scaled to a whole run."""
    told = json.loads(run([sys.executable, str(HERE / script), str(edge), str(steps)])[2])
    times = told["of"] / told["steps"]
    return told["wall_s"] * times, told["cpu_s"] * times, told["end_s"]


def volumes(edge, end_s, until_c=None):
    """The general solver: times scaled to a whole run, and when its metal was below `until_c`."""
    with tempfile.TemporaryDirectory() as folder:
        case = Path(folder) / "case"
        general.lay_out(case, edge, VOLUMES_STEP_S, end_s)
        wall, cpu, said = run([general.PROGRAM], cwd=case, env=general.ENVIRONMENT)
    steps = re.split(r"^Time = ", said, flags=re.M)[1:]
    solid_s = None
    for step in steps:
        metal = [float(most) for most in re.findall(r"region metal\n.*?Min/max T:\S+ (\S+)", step, flags=re.S)]
        if until_c and metal and metal[-1] < until_c + 273.15:
            solid_s = float(step.split()[0])
            break
    whole = 652.4 / VOLUMES_STEP_S / len(steps)
    return wall * whole, cpu * whole, solid_s


def told(name, times, first):
    walls, cpus = [time[0] for time in times], [time[1] for time in times]
    row = [min(walls), statistics.median(walls), min(cpus)]
    ratios = [f"{mine / other:.0f}" if first else "" for mine, other in zip(row, first or row)]
    print(f"{name:<44}" + "".join(f"{seconds:>10.2f} s {ratio:>7}" for seconds, ratio in zip(row, ratios)), flush=True)
    return row


def main():
    given = argparse.ArgumentParser()
    given.add_argument("oddside")
    given.add_argument("--edge", type=int, default=128)
    given.add_argument("--rounds", type=int, default=5)
    given.add_argument("--explicit-steps", type=int, default=60)
    given.add_argument("--implicit-steps", type=int, default=2)
    wanted = given.parse_args()
    edge = wanted.edge
    volumed = shutil.which(general.PROGRAM)
    print(f"{edge} cells an edge, load before {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    print("explicit steps end at 32 cells an edge at", round(scaled("explicit.py", 32, 0)[2], 1), "s")
    if volumed:
        print("the general solver is solid at 32 cells an edge at", volumes(32, 900, 580.0)[2], "s")
    rounds = {"ours": [], "explicit": [], "general": []}
    for _ in range(wanted.rounds):
        rounds["ours"].append(ours(wanted.oddside, edge))
        rounds["explicit"].append(scaled("explicit.py", edge, wanted.explicit_steps))
    print(f"{'':<44}{'best':>12}{'ratio':>8}{'median':>12}{'ratio':>8}{'processor':>12}{'ratio':>8}")
    first = told("oddside conduct, the whole process", rounds["ours"], None)
    told("explicit, compiled Python, scaled", rounds["explicit"], first)
    if volumed:
        told("general finite volumes, one process, scaled", [volumes(edge, 12)], first)
    if wanted.implicit_steps:
        told("implicit in Python, scaled", [scaled("implicit.py", edge, wanted.implicit_steps)], first)
    print(f"ours freezes last at {rounds['ours'][0][2]:.2f} s; load after {os.getloadavg()[0]:.1f}")


main()
