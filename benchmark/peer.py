"""Reads a GPX file with Debian's general-purpose GPX library. usage: peer.py FILE [once]

Prints the milliseconds of computing time that one reading takes, the median of nine after two to warm up; with
"once" reads it once and prints the number of points.
"""

import statistics
import sys
import time

try:
    import gpxpy
except ImportError:
    sys.exit(69)

with open(sys.argv[1], encoding="utf-8") as file:
    text = file.read()

if len(sys.argv) > 2:
    print(gpxpy.parse(text).get_points_no())
else:
    times = []
    for _ in range(11):
        before = time.process_time()
        gpxpy.parse(text)
        times.append(time.process_time() - before)
    print(statistics.median(times[2:]) * 1000)
