"""Times this program's mesh room beside trimesh, on the same files in one run.

    python3 benches/compare.py PATH/TO/timings [MESH ...]

`timings` is what `cargo build -p pattern --example timings` builds. Needs numpy, trimesh 5.2,
scipy, rtree, embreex. Without a mesh it makes a bumpy ball of a million facets and one of a hundred
thousand. Each figure is the best of a few runs; answers are compared before times are.
"""
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
import trimesh
from trimesh.ray.ray_triangle import RayMeshIntersector as PlainRays

RAYS = 200_000
PLAIN_RAYS = 20
RUNS = 2


def bumpy_ball(round_, rows, path):
    """The ball of `crates/pattern/benches/look.rs` as a binary STL file."""
    tilt = np.pi * np.arange(rows + 1) / rows
    turn = 2 * np.pi * np.arange(round_) / round_
    tilt, turn = np.meshgrid(tilt, turn, indexing="ij")
    radius = 50 * (1 + 0.05 * np.sin(7 * tilt) * np.cos(9 * turn) * np.sin(tilt))
    points = np.stack(
        [radius * np.sin(tilt) * np.cos(turn), radius * np.sin(tilt) * np.sin(turn), radius * np.cos(tilt)],
        axis=-1,
    )
    points[0], points[-1] = points[0, 0], points[-1, 0]
    here, right = points, np.roll(points, -1, axis=1)
    a, b, c, d = here[:-1], here[1:], right[1:], right[:-1]
    facets = np.concatenate([np.stack([a, b, c], 2)[:-1].reshape(-1, 3, 3), np.stack([a, c, d], 2)[1:].reshape(-1, 3, 3)])
    record = np.zeros(len(facets), dtype=[("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("free", "<u2")])
    record["corners"] = facets
    with open(path, "wb") as file:
        file.write(b"\0" * 80 + np.uint32(len(facets)).tobytes() + record.tobytes())
    return path


def best(work, runs=RUNS):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        result = work()
        times.append(time.perf_counter() - start)
    return min(times), result


def ours(program, path, rays, cell):
    found = {}
    for _ in range(RUNS):
        said = subprocess.run([program, path, rays, str(cell)], check=True, capture_output=True, text=True)
        for line in said.stdout.splitlines():
            what, seconds, answer = line.split("\t")
            seconds = min(float(seconds), found.get(what, (np.inf,))[0])
            found[what] = (seconds, float(answer))
    return found


def make_rays(mesh, path):
    """From places round the part to places within its box."""
    chance = np.random.default_rng(7)
    low, high = mesh.bounds
    away = chance.normal(size=(RAYS, 3))
    away *= np.linalg.norm(high - low) / np.linalg.norm(away, axis=1)[:, None]
    start = (low + high) / 2 + away
    along = chance.uniform(low, high, size=(RAYS, 3)) - start
    np.hstack([start, along]).astype("<f8").tofile(path)
    return start, along


def theirs(path, start, along, cell):
    found = {}
    seconds, mesh = best(lambda: trimesh.load(path, force="mesh"))
    found["read"] = (seconds, len(mesh.faces))

    def measure():
        fresh = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
        return fresh.volume, fresh.area, fresh.center_mass

    seconds, measures = best(measure)
    found["measure"] = (seconds, measures[0])
    compiled = mesh.ray
    compiled.intersects_first(start[:1], along[:1])
    seconds, first = best(lambda: compiled.intersects_first(start, along))
    found["rays"] = (seconds, int((first >= 0).sum()))
    found["backend"] = type(compiled).__module__
    plain = PlainRays(mesh)
    plain.intersects_first(start[:1], along[:1])
    few = (start[:PLAIN_RAYS], along[:PLAIN_RAYS])
    seconds, first = best(lambda: plain.intersects_first(*few), 1)
    found["rays in Python"] = (seconds * RAYS / PLAIN_RAYS, int((first >= 0).sum()))
    seconds, filled = best(lambda: mesh.voxelized(cell).fill(), 1)
    found["fill"] = (seconds, int(filled.filled_count))
    return found


def compare(program, path, folder):
    mesh = trimesh.load(path, force="mesh")
    cell = float(np.max(mesh.extents)) / 120
    rays = folder / "rays"
    start, along = make_rays(mesh, rays)
    a, b = ours(program, path, rays, cell), theirs(path, start, along, cell)
    print(f"\n{Path(path).name}: {len(mesh.faces):,} facets, cells of {cell:.4g}; trimesh {trimesh.__version__}, rays by {b['backend']}")
    print(f"volume {a['measure'][1]:.6g} and {b['measure'][1]:.6g}; rays that meet {a['rays'][1]:.0f} and {b['rays'][1]}; cells {a['fill'][1]:.0f} and {b['fill'][1]}")
    rows = [
        ("read and join points", "read", "read"),
        ("volume, surface, centre", "measure", "measure"),
        (f"{RAYS:,} rays, compiled there, two cores here", "rays", "rays"),
        (f"{RAYS:,} rays, compiled there, one core each", "rays on one core", "rays"),
        (f"{RAYS:,} rays, in Python there", "rays", "rays in Python"),
        ("cells within", "fill", "fill"),
    ]
    for name, here, there in rows:
        print(f"| {name} | {a[here][0]:.3g} s | {b[there][0]:.3g} s | {b[there][0] / a[here][0]:.1f} |")
    print(f"tree {a['tree'][0]:.3g} s; look at it as a whole {a['look'][0]:.3g} s")


def main():
    program, *paths = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        if not paths:
            paths = [bumpy_ball(500, 100, folder / "ball_100k.stl"), bumpy_ball(1000, 500, folder / "ball_1m.stl")]
        for path in paths:
            compare(program, path, folder)


main()
