"""The block by FiPy: implicit finite volumes, apparent heat capacity swept to itself.

    FIPY_SOLVERS=scipy python3 implicit.py EDGE STEPS      (0 steps: until all is solid)

Prints one JSON object. Needs fipy, scipy, numpy."""
import json
import os
import sys
import time

os.environ.setdefault("FIPY_SOLVERS", "scipy")
import fipy as fp
import numpy as np

import problem as p

LONGEST_S, SWEEPS = 2.0, 3


def steps_until(end_s):
    """Steps of the same schedule until a time."""
    t, dt, steps = 0.0, 0.05, 0
    while t < end_s:
        t, dt, steps = t + dt, min(dt * 1.05, LONGEST_S), steps + 1
    return steps


def main():
    n, wanted = int(sys.argv[1]), int(sys.argv[2])
    dx = p.EDGE / n
    mesh = fp.Grid3D(nx=n, ny=n, nz=n, dx=dx, dy=dx, dz=dx)
    m = p.metal_mask(n).ravel()                     # FiPy numbers x fastest, as this mask does
    T = fp.CellVariable(mesh=mesh, value=np.where(m, p.T_POUR, p.T_SAND0), hasOld=True)
    C = fp.CellVariable(mesh=mesh, value=1.0)
    K = fp.CellVariable(mesh=mesh, value=1.0)
    eq = fp.TransientTerm(coeff=C) == fp.DiffusionTerm(coeff=K.harmonicFaceValue)
    solver = fp.LinearPCGSolver(tolerance=1e-6, iterations=500)
    H = p.enthalpy_of_temperature(T.value, m)
    t, dt, steps = 0.0, 0.05, 0
    wall, cpu = time.perf_counter(), time.process_time()
    while True:
        T.updateOld()
        H0, T0 = H.copy(), T.value.copy()
        K.setValue(p.conductivity_of_enthalpy(H, m))
        for k in range(SWEEPS):
            T1 = T.value
            dT = T1 - T0
            H1 = p.enthalpy_of_temperature(T1, m)
            mush = (H1 > 0) & (H1 < p.H_LIQ)
            tangent = np.where(m, np.where(mush, p.H_LIQ / (p.T_LIQ - p.T_SOL), p.RC_M), p.RC_S)
            C.setValue(np.where(np.abs(dT) > 1e-6, (H1 - H0) / np.where(np.abs(dT) > 1e-6, dT, 1), tangent))
            eq.sweep(var=T, dt=dt, solver=solver)
        H = H0 + C.value * (T.value - T0)           # energy actually exchanged
        T.setValue(p.temperature_of_enthalpy(H, m))
        t, dt, steps = t + dt, min(dt * 1.05, LONGEST_S), steps + 1
        if wanted and steps >= wanted:
            break
        if not wanted and not (H[m] > 0).any():
            break
    print(json.dumps({
        "steps": steps, "of": steps_until(p.REFERENCE_LAST[n]), "end_s": t,
        "wall_s": time.perf_counter() - wall, "cpu_s": time.process_time() - cpu,
    }))


main()
