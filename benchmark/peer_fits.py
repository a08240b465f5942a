"""The smoothing and the fits once more, with numpy and scipy. usage: peer_fits.py FOLDER [WORK]

FOLDER holds the inputs that the Java side wrote. Each work is done once to warm up, then until it has taken one
second, three times at least; where one takes longer than ten seconds, once. Prints one line for each: its name, the
median of the milliseconds of computing time, and what it found. The smoothed states go to smooth.theirs, little-endian.
"""

import os

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import statistics
import sys
import time

try:
    import numpy as np
    import scipy
    from scipy.integrate import solve_ivp
    from scipy.linalg import solveh_banded
    from scipy.optimize import least_squares
except ImportError:
    sys.exit(69)

FOLDER = sys.argv[1]


def table(name):
    return np.loadtxt(os.path.join(FOLDER, name), ndmin=2)


def keep(name, array):
    np.ascontiguousarray(array, dtype="<f8").tofile(os.path.join(FOLDER, name))


# --- The smoother on distance, speed and acceleration, driven by white jerk


def transitions(t):
    dt = np.diff(t, prepend=t[0])
    f = np.zeros((len(t), 3, 3))
    f[:] = np.eye(3)
    f[:, 0, 1] = f[:, 1, 2] = dt
    f[:, 0, 2] = dt**2 / 2
    return dt, f


def jerk_noise(dt, q):
    noise = np.empty((len(dt), 3, 3))
    noise[:, 0, 0] = dt**5 / 20
    noise[:, 0, 1] = noise[:, 1, 0] = dt**4 / 8
    noise[:, 0, 2] = noise[:, 2, 0] = dt**3 / 6
    noise[:, 1, 1] = dt**3 / 3
    noise[:, 1, 2] = noise[:, 2, 1] = dt**2 / 2
    noise[:, 2, 2] = dt
    return q * noise


def prior(v0, sigma):
    return np.array([0, v0, 0.0]), np.diag([1e-12, 4 * sigma**2 + 1, 25.0])


def smooth(ride, sigma, q):
    """Filter forwards, Rauch, Tung and Striebel backwards: means and covariances of every sample."""
    t, z = ride
    n = len(t)
    dt, f = transitions(t)
    noise = jerk_noise(dt, q)
    r = sigma**2
    ahead_mean, ahead_cov = np.empty((n, 3)), np.empty((n, 3, 3))
    mean, cov = np.empty((n, 3)), np.empty((n, 3, 3))
    x, p = prior(z[0], sigma)
    for k in range(n):
        fk = f[k]
        x = fk @ x
        p = fk @ p @ fk.T + noise[k]
        ahead_mean[k], ahead_cov[k] = x, p
        gain = p[:, 1] / (p[1, 1] + r)
        x = x + gain * (z[k] - x[1])
        p = p - np.outer(gain, p[1])
        mean[k], cov[k] = x, p
    # All gains of the way back at once.
    back = np.linalg.solve(ahead_cov[1:], f[1:] @ cov[:-1]).transpose(0, 2, 1)
    for k in range(n - 2, -1, -1):
        g = back[k]
        mean[k] += g @ (mean[k + 1] - ahead_mean[k + 1])
        cov[k] += g @ (cov[k + 1] - ahead_cov[k + 1]) @ g.T
    return mean, cov


def smooth_banded(ride, sigma, q):
    """The same speeds and accelerations as one banded system of equations; it gives no covariances.

    Distance is left out: nothing samples it, and with it the system is too ill-conditioned to be solved over hours.
    """
    t, z = ride
    n = len(t)
    dt, f = transitions(t)
    f = f[:, 1:, 1:]
    weight = np.linalg.inv(jerk_noise(dt[1:], q)[:, 1:, 1:])
    start, start_cov = prior(z[0], sigma)
    start_weight = np.linalg.inv(start_cov[1:, 1:])
    diagonal = np.zeros((n, 2, 2))
    right = np.zeros((n, 2))
    diagonal[0] += start_weight
    right[0] += start_weight @ start[1:]
    diagonal[:, 0, 0] += 1 / sigma**2
    right[:, 0] += z / sigma**2
    cross = -(f[1:].transpose(0, 2, 1) @ weight)
    diagonal[:-1] -= cross @ f[1:]
    diagonal[1:] += weight
    band = np.zeros((4, 2 * n))
    for i in range(2):
        for j in range(i, 2):
            band[3 - (j - i), j::2] = diagonal[:, i, j]
        for j in range(2):
            band[3 - (2 + j - i), 2 + j :: 2] = cross[:, i, j]
    return solveh_banded(band, right.ravel()).reshape(n, 2)


# --- Least squares with priors as extra residuals


class Problem:
    """Parameters as the Java side wrote them: start, prior mean and standard deviation, bounds."""

    def __init__(self, rows):
        self.start, self.mean, self.sd, low, high = rows.T
        self.bounds = (low, high)
        self.known = np.isfinite(self.sd)

    def solve(self, of_samples, **how):
        def residuals(p):
            of_priors = (p[self.known] - self.mean[self.known]) / self.sd[self.known]
            return np.concatenate([of_samples(p), of_priors])

        scale = np.maximum(np.abs(self.start), 0.1)
        found = least_squares(residuals, self.start, x_scale=scale, ftol=1e-10, xtol=1e-8, gtol=1e-10, **how)
        covariance = np.linalg.inv(found.jac.T @ found.jac)
        return found.x, np.sqrt(np.diag(covariance)), 2 * found.cost


def way(p, u):
    """Where a braked bike is, seconds from onset: riding on, build-up, braking, rest."""
    entry, drift, _, build_up, deceleration, rise, _ = p
    after = entry - deceleration * build_up / 2
    at_end = entry * build_up - deceleration * build_up**2 / 6
    loss = max(0.0, after)
    square = max(0.0, deceleration**2 + 2 * rise * loss)
    rest = 2 * loss / (deceleration + np.sqrt(square))
    tau = np.minimum(u - build_up, rest)
    braking = at_end + after * tau - deceleration * tau**2 / 2 - rise * tau**3 / 6
    building = entry * u - deceleration * u**3 / (6 * build_up)
    return np.where(u < 0, entry * u + drift * u**2 / 2, np.where(u <= build_up, building, braking))


def stop_fit(samples, problem, sigma, rest_mps, **how):
    t, v = samples

    def residuals(p):
        p = p.copy()
        p[3] = max(p[3], 1e-6)
        u, window = t - p[2], p[6]
        mean = np.maximum(0, (way(p, u + window / 2) - way(p, u - window / 2)) / window)
        return (np.sqrt(mean**2 + rest_mps**2) - v) / sigma

    return problem.solve(residuals, **how)


def forces(p, way_back, setting):
    mass, turning, air, gravity = setting
    rolling, area, grade, wind = p[:4]
    if way_back:
        grade, wind = -grade, -wind
    slope = np.sqrt(1 + grade**2)
    constant = mass * gravity * (rolling + grade) / slope / (mass + turning)
    return constant, air * area / 2 / (mass + turning), wind


def coast_integrated(t, v0, constant, square, wind):
    def rate(_, v):
        over = v + wind
        return -(constant + square * over * np.abs(over))

    return solve_ivp(rate, (t[0], t[-1]), [v0], t_eval=t, rtol=1e-8, atol=1e-8).y[0]


def coast_closed(t, v0, constant, square, wind):
    """Valid while the air comes from ahead and the bike is slowed."""
    root = np.sqrt(constant / square)
    return root * np.tan(np.arctan((v0 + wind) / root) - np.sqrt(constant * square) * (t - t[0])) - wind


def coast_fit(rows, problem, setting, sigma, speeds, **how):
    runs = [(back, rows[rows[:, 0] == back]) for back in (0, 1)]

    def residuals(p):
        parts = []
        for number, (back, run) in enumerate(runs):
            shown = speeds(run[:, 1], p[4 + number], *forces(p, back, setting))
            parts.append((shown - run[:, 2]) / sigma)
        return np.concatenate(parts)

    return problem.solve(residuals, **how)


# --- The cheapest division into pieces of constant speed, with pruning


def pieces(values, penalty):
    n = len(values)
    centred = values - values.mean()
    sums = np.concatenate([[0], np.cumsum(centred)])
    squares = np.concatenate([[0], np.cumsum(centred**2)])
    best = np.empty(n + 1)
    best[0] = -penalty
    before = np.zeros(n + 1, dtype=int)
    begins = np.array([0])
    for j in range(1, n + 1):
        cost = squares[j] - squares[begins] - (sums[j] - sums[begins]) ** 2 / (j - begins)
        up_to = best[begins] + np.maximum(0, cost)
        k = np.argmin(up_to)
        best[j] = up_to[k] + penalty
        before[j] = begins[k]
        begins = np.append(begins[up_to <= best[j] + 1e-9 * (1 + abs(best[j]))], j)
    ends = []
    j = n
    while j > 0:
        ends.append(j)
        j = before[j]
    return ends[::-1]


# --- Timing


def timed(name, work, show):
    before = time.process_time()
    found = work()
    first = time.process_time() - before
    times = []
    while not times or (first < 10 and (sum(times) < 1 or len(times) < 3)):
        before = time.process_time()
        found = work()
        times.append(time.process_time() - before)
    print(name, repr(statistics.median(times) * 1000), *(repr(float(x)) for x in show(found)), flush=True)


def fitted(found):
    values, deviations, cost = found
    return [cost, *values, *deviations]


def main():
    print("versions", np.__version__, scipy.__version__, sys.version.split()[0])
    ride, (sigma, q) = table("ride.txt").T.copy(), table("ride-noise.txt")[0]

    def smoothed(found):
        mean, cov = found
        keep("smooth.theirs", np.column_stack([mean[:, 1], np.sqrt(cov[:, 1, 1])]))
        return []

    def banded(mean):
        keep("banded.theirs", mean[:, 0])
        return []

    stop, (stop_sigma, rest) = table("stop.txt").T.copy(), table("stop-noise.txt")[0]
    stop_problem = Problem(table("stop-parameters.txt"))
    coasts, setting = table("coast.txt"), table("coast-setting.txt")[0]
    coast_sigma = table("coast-noise.txt")[0][0]
    coast_problem = Problem(table("coast-parameters.txt"))
    means, penalty = table("means.txt").ravel(), table("means-penalty.txt")[0][0]
    inside = {"method": "trf", "bounds": stop_problem.bounds}
    # One-sided differences are too small a step for an integration of this tolerance.
    central = {"jac": "3-point", "bounds": coast_problem.bounds}
    works = {
        "smooth": (lambda: smooth(ride, sigma, q), smoothed),
        "smooth-banded": (lambda: smooth_banded(ride, sigma, q), banded),
        "stop": (lambda: stop_fit(stop, stop_problem, stop_sigma, rest, **inside), fitted),
        "stop-lm": (lambda: stop_fit(stop, stop_problem, stop_sigma, rest, method="lm"), fitted),
        "coast": (
            lambda: coast_fit(coasts, coast_problem, setting, coast_sigma, coast_integrated, **central),
            fitted,
        ),
        "coast-closed": (
            lambda: coast_fit(coasts, coast_problem, setting, coast_sigma, coast_closed, method="lm"),
            fitted,
        ),
        "pieces": (lambda: pieces(means, penalty), lambda ends: ends),
    }
    for name in sys.argv[2:] or works:
        timed(name, *works[name])


main()
