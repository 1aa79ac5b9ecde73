"""The block by plain explicit steps in compiled Python (numba), single precision, all threads.

    python3 explicit.py EDGE STEPS      (0 steps: until all is solid)

Prints one JSON object."""
import json
import sys
import time

import numba as nb
import numpy as np

import problem as p

TS, TL, HL, RM, RS, KS, KL, KSD = (np.float32(v) for v in (
    p.T_SOL, p.T_LIQ, p.H_LIQ, p.RC_M, p.RC_S, p.K_SOL, p.K_LIQ, p.K_SAND))


@nb.njit(parallel=True, fastmath=True)
def props(H, m, T, K):
    n = H.shape[0]
    a = (TL - TS) / HL; b = (KL - KS) / HL; irm = np.float32(1) / RM; irs = np.float32(1) / RS
    for z in nb.prange(n):
        for y in range(n):
            for x in range(n):
                h = H[z, y, x]
                if m[z, y, x]:
                    hc = min(max(h, np.float32(0)), HL)
                    T[z, y, x] = TS + (h - hc) * irm + hc * a
                    K[z, y, x] = KS + hc * b
                else:
                    T[z, y, x] = h * irs
                    K[z, y, x] = KSD


@nb.njit(parallel=True, fastmath=True)
def step(H, T, K, lam):
    n = H.shape[0]
    two = np.float32(2)
    for z in nb.prange(n):
        for y in range(n):
            for x in range(n):
                t = T[z, y, x]; k = K[z, y, x]; s = np.float32(0)
                if x > 0:
                    q = K[z, y, x-1]; s += two*k*q/(k+q)*(T[z, y, x-1]-t)
                if x < n-1:
                    q = K[z, y, x+1]; s += two*k*q/(k+q)*(T[z, y, x+1]-t)
                if y > 0:
                    q = K[z, y-1, x]; s += two*k*q/(k+q)*(T[z, y-1, x]-t)
                if y < n-1:
                    q = K[z, y+1, x]; s += two*k*q/(k+q)*(T[z, y+1, x]-t)
                if z > 0:
                    q = K[z-1, y, x]; s += two*k*q/(k+q)*(T[z-1, y, x]-t)
                if z < n-1:
                    q = K[z+1, y, x]; s += two*k*q/(k+q)*(T[z+1, y, x]-t)
                H[z, y, x] += lam * s


def main():
    n, wanted = int(sys.argv[1]), int(sys.argv[2])
    dx, dt = p.EDGE / n, p.dt_explicit(n)
    m = p.metal_mask(n)
    H = p.enthalpy_of_temperature(np.where(m, p.T_POUR, p.T_SAND0), m).astype(np.float32)
    T = np.empty_like(H)
    K = np.empty_like(H)
    lam = np.float32(dt / dx**2)
    props(H, m, T, K)
    step(H.copy(), T, K, lam)  # compiled before the clock starts
    steps, wall, cpu = 0, time.perf_counter(), time.process_time()
    while True:
        props(H, m, T, K)
        step(H, T, K, lam)
        steps += 1
        if wanted and steps >= wanted:
            break
        if not wanted and steps % 50 == 0 and not (H[m] > 0).any():
            break
    print(json.dumps({
        "steps": steps, "of": round(p.REFERENCE_LAST[n] / dt), "end_s": steps * dt,
        "wall_s": time.perf_counter() - wall, "cpu_s": time.process_time() - cpu,
    }))


main()
