"""The core's mix to Lab as a vectorised NumPy program in float32: nanoseconds a mix.

The same sums: K and S by parts, a Kubelka-Munk film on paper, the surface's
correction, weights of an observer, CIELAB. The values do not matter to the time.
"""

import time

import numpy as np

BANDS, RUNS, RUN_MIXES = 36, 9, 16384
# Few mixes at once pay for Python, many for memory: the fastest number counts.
BATCHES = [128, 256, 512, 1024, 4096]
random = np.random.default_rng(1)


def values(*shape):
    return random.uniform(0.1, 1.0, shape).astype(np.float32)


k, s, paper, weights = values(2, BANDS), values(2, BANDS), values(BANDS), values(BANDS, 3)
one, k1, k2, load = np.float32(1), np.float32(0.03), np.float32(0.6), np.float32(0.5)
white = weights.sum(axis=0)


def mix(share):
    kx = (k[0] + share * (k[1] - k[0])) * load
    sx = (s[0] + share * (s[1] - s[0])) * load
    a, b = kx + sx, np.sqrt(kx * (kx + sx + sx))
    t = np.tanh(b) / b
    inner = (paper + t * (sx - a * paper)) / (one + t * (a - sx * paper))
    outer = k1 + (one - k1) * (one - k2) * inner / (one - k2 * inner)
    x, y, z = np.cbrt(outer @ weights / white).T
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)])


best = float("inf")
for batch in BATCHES:
    share = values(batch, 1)
    assert mix(share).dtype == np.float32
    for _ in range(RUNS):
        start = time.perf_counter()
        for _ in range(RUN_MIXES // batch):
            mix(share)
        best = min(best, (time.perf_counter() - start) / RUN_MIXES)
print(f"{best * 1e9:.1f}")
