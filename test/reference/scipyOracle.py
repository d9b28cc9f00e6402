"""Values of statistics and signals from scipy and numpy, with the inputs they were made from, as one JSON object.

Run:   /usr/bin/python3 test/reference/scipyOracle.py > test/reference/values/scipy.json
Made with scipy 1.10.1 and numpy 1.24.2 (Debian 12: python3-scipy, python3-numpy). The test runs it again where both
are installed and compares; where they are not, the stored file stands in.
"""

import json

import numpy as np
from scipy import signal, stats

rng = np.random.default_rng(20240229)


def quantiles():
    values = rng.normal(size=37)
    shares = [0, 0.05, 0.1, 0.25, 0.5, 0.77, 0.95, 1]
    return {"values": values.tolist(), "shares": shares, "expected": np.quantile(values, shares).tolist()}


def fourier():
    values = rng.normal(size=64)
    spectrum = np.fft.fft(values)
    return {"values": values.tolist(), "real": spectrum.real.tolist(), "imaginary": spectrum.imag.tolist()}


def correlation():
    a = rng.normal(size=200)
    b = np.roll(a, 7) + 0.3 * rng.normal(size=200)
    lags = list(range(0, 20))
    expected = [float(np.corrcoef(a[: 200 - k], b[k:])[0, 1]) for k in lags]
    return {"a": a.tolist(), "b": b.tolist(), "lags": lags, "expected": expected}


def lomb():
    t = np.cumsum(rng.uniform(0.05, 0.6, size=120))
    y = np.sin(2 * np.pi * 0.7 * t) + 0.5 * rng.normal(size=120)
    f = np.array([0.1, 0.35, 0.7, 1.1, 1.9])
    # scipy's result is not normalised; Numerical Recipes divides by the variance with n - 1.
    power = signal.lombscargle(t, y - y.mean(), 2 * np.pi * f) / y.var(ddof=1)
    return {"t": t.tolist(), "y": y.tolist(), "frequencies": f.tolist(), "expected": power.tolist()}


def transfer():
    """Coherence, gain and lag at one frequency over segments, waves by numpy's own least squares."""
    rate, hz, segments, length = 20.0, 1.3, 12, 4.0
    t = np.arange(int(rate * segments * length)) / rate
    phase = 2 * np.pi * hz * t + np.cumsum(rng.normal(scale=0.05, size=t.size))
    x = np.sin(phase) + 0.1 * rng.normal(size=t.size)
    y = 0.4 * np.sin(phase - 2 * np.pi * hz * 0.2) + 0.3 * rng.normal(size=t.size)
    xs, ys = [], []
    for k in range(segments):
        inside = (t >= k * length) & (t < (k + 1) * length)
        s = t[inside]
        basis = np.stack([np.ones_like(s), s - s.mean(), np.cos(2 * np.pi * hz * s), np.sin(2 * np.pi * hz * s)], axis=1)
        for values, found in ((x, xs), (y, ys)):
            c = np.linalg.lstsq(basis, values[inside], rcond=None)[0]
            found.append(c[2] - 1j * c[3])
    xs, ys = np.array(xs), np.array(ys)
    cross = np.sum(np.conj(xs) * ys)
    power = np.sum(np.abs(xs) ** 2)
    turns = (-np.angle(cross) / (2 * np.pi)) % 1
    f, welch = signal.coherence(x, y, rate, window="boxcar", nperseg=int(rate * length), noverlap=0)
    return {
        "rate": rate,
        "hz": hz,
        "segments": segments,
        "lengthS": length,
        "x": x.tolist(),
        "y": y.tolist(),
        "gain": float(np.abs(cross) / power),
        "coherence": float(np.abs(cross) ** 2 / (power * np.sum(np.abs(ys) ** 2))),
        "lagS": float(turns / hz),
        "welchCoherence": float(np.interp(hz, f, welch)),
    }


def bootstrap():
    values = rng.exponential(size=60)
    result = stats.bootstrap((values,), np.mean, method="percentile", n_resamples=20000, random_state=rng)
    return {"values": values.tolist(), "expected": [float(result.confidence_interval.low), float(result.confidence_interval.high)]}


def tests():
    a = rng.normal(0.3, 1.0, size=14)
    b = rng.normal(0.0, 1.7, size=11)
    c = a + rng.normal(0.4, 0.8, size=14)
    welch = stats.ttest_ind(a, b, equal_var=False)
    paired = stats.ttest_rel(a, c)
    mann = stats.mannwhitneyu(a, b, method="exact")
    mann_greater = stats.mannwhitneyu(a, b, method="exact", alternative="greater")
    signed = stats.wilcoxon(c - a, mode="exact")
    signed_greater = stats.wilcoxon(c - a, mode="exact", alternative="greater")
    return {
        "a": a.tolist(),
        "b": b.tolist(),
        "c": c.tolist(),
        "welch": [float(welch.statistic), float(welch.pvalue)],
        "paired": [float(paired.statistic), float(paired.pvalue)],
        "mann": [float(mann.statistic), float(mann.pvalue), float(mann_greater.pvalue)],
        "signed": [float(signed_greater.statistic), float(signed.pvalue), float(signed_greater.pvalue)],
    }


def distributions():
    beta = [[p, a, b, float(stats.beta.ppf(p, a, b))] for p, a, b in [(0.025, 3, 28), (0.5, 0.7, 0.7), (0.975, 81, 4), (0.9, 500, 500), (0.001, 2, 9)]]
    chi = [[p, k, float(stats.chi2.ppf(p, k))] for p, k in [(0.025, 1), (0.975, 2), (0.5, 20), (0.025, 160), (0.999, 7)]]
    t = [[t, d, float(2 * stats.t.sf(t, d))] for t, d in [(0.5, 1), (2.1, 9), (1.86, 17.776), (12.0, 3), (3.3, 400)]]
    return {"beta": beta, "chiSquare": chi, "student": t}


parts = [quantiles, fourier, correlation, lomb, transfer, bootstrap, tests, distributions]
print(json.dumps({part.__name__: part() for part in parts}, indent=1))
