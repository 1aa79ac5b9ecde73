"""The figures of a file worked out again by statsmodels, scipy and numpy.

    python3 statistics.py FILE
    python3 statistics.py --lines

Reads cases from a JSON file and prints the answers as JSON; or says that it is ready and answers a
fit a line, for each line that it reads. Ends with status 3 where one of the
libraries is missing.
"""
import json
import sys

try:
    import numpy
    import scipy.optimize
    import scipy.stats
    import statsmodels.api
except ImportError:
    sys.exit(3)


def fit(case):
    rows, measured = numpy.array(case["rows"]), numpy.array(case["measured"])
    found = statsmodels.api.OLS(measured, rows).fit()
    ahead = found.get_prediction(numpy.array(case["new"])).summary_frame(alpha=0.05)
    influence = found.get_influence()
    off = measured - measured.mean()
    return {
        "values": found.params.tolist(),
        "errors": found.bse.tolist(),
        "lows": found.conf_int()[:, 0].tolist(),
        "highs": found.conf_int()[:, 1].tolist(),
        "chances": found.pvalues.tolist(),
        "noise": float(numpy.sqrt(found.mse_resid)),
        "leverages": influence.hat_matrix_diag.tolist(),
        "taken_up": float(1 - found.ssr / (off @ off)),
        "foretold": float(1 - (influence.resid_press @ influence.resid_press) / (off @ off)),
        "mean": ahead["mean"].tolist(),
        "mean_low": ahead["mean_ci_lower"].tolist(),
        "batch_high": ahead["obs_ci_upper"].tolist(),
    }


def believed(case):
    """The best linear unbiased guess with an unknown mean, from the bordered system of equations."""
    spans = numpy.array(case["spans"])
    places = lambda points: (numpy.array(points) - spans[:, 0]) / (spans[:, 1] - spans[:, 0])
    made, new = places(case["points"]), places(case["new"])
    near = lambda a, b: case["swing"] ** 2 * numpy.exp(
        -0.5 * (((a[:, None, :] - b[None, :, :]) / numpy.array(case["reaches"])) ** 2).sum(axis=2)
    )
    count = len(made)
    whole = numpy.ones((count + 1, count + 1))
    whole[:count, :count] = near(made, made) + case["noise"] ** 2 * numpy.eye(count)
    whole[count, count] = 0.0
    side = numpy.vstack([near(made, new), numpy.ones(len(new))])
    weights = numpy.linalg.solve(whole, side)
    mean = weights[:count].T @ numpy.array(case["responses"])
    variance = case["swing"] ** 2 - (weights * side).sum(axis=0)
    return {"mean": mean.tolist(), "deviation": numpy.sqrt(variance.clip(0)).tolist()}


def corners(case):
    """Least and largest value of a direction over a region, by a linear programme."""
    ends = []
    for sign in (1.0, -1.0):
        found = scipy.optimize.linprog(
            sign * numpy.array(case["direction"]),
            A_ub=case["limits"] or None,
            b_ub=case["highs"] or None,
            A_eq=[[1.0] * len(case["bounds"])],
            b_eq=[1.0],
            bounds=case["bounds"],
        )
        ends.append(sign * found.fun)
    return ends


def refit(case):
    """Coefficients of a fit that may have no runs to spare."""
    rows, measured = numpy.array(case["rows"]), numpy.array(case["measured"])
    found = statsmodels.api.OLS(measured, rows).fit()
    off = measured - measured.mean()
    spare = len(measured) - len(found.params) > 0
    return {
        "values": found.params.tolist(),
        "noise": float(numpy.sqrt(found.mse_resid)) if spare else None,
        "taken_up": float(1 - found.ssr / (off @ off)),
    }


if sys.argv[1] == "--lines":
    print("ready", flush=True)
    for line in sys.stdin:
        print(json.dumps(refit(json.loads(line))), flush=True)
    sys.exit(0)

with open(sys.argv[1], encoding="utf-8") as file:
    asked = json.load(file)
json.dump(
    {
        "fits": [fit(case) for case in asked["fits"]],
        "beliefs": [believed(case) for case in asked["beliefs"]],
        "corners": [corners(case) for case in asked["corners"]],
        "students": [2 * scipy.stats.t.sf(abs(t), d) for t, d in asked["students"]],
        "fishers": [scipy.stats.f.sf(f, a, b) for f, a, b in asked["fishers"]],
        "pairs": [scipy.stats.ttest_ind(a, b).pvalue for a, b in asked["pairs"]],
        "alike": [scipy.stats.f_oneway(*groups).pvalue for groups in asked["groups"]],
    },
    sys.stdout,
)
